import type { SupplyCurve } from "../hydraulics/network.ts";
import { supplyHead_m } from "../hydraulics/read-supply.ts";

/** Least velocity at the end of a hose that carries dirt out (1 ft/s; ASAE EP405, from memory; calculation handbook, section 4.8). */
export const flushVelocity_mps = 0.3;

/** What has to run out of the open end of a hose to flush it, L/s: 0.3 m/s through its bore. */
export function flushFlow_lps(hoseInside_mm: number): number {
  return flushVelocity_mps * (Math.PI / 4) * (hoseInside_mm / 1000) ** 2 * 1000;
}

/** What a set takes of the water, and the place in it that has least to spare. */
export interface RunningSet {
  readonly laterals: number;
  readonly flow_lps: number;
  /** Lost in pipe on the way to the tee with least to spare, before a regulator that holds the pressure back and behind it. */
  readonly lost_m: number;
  readonly behind_m: number;
  /** Total head that the regulator holds; Infinity where none does. */
  readonly held_m: number;
  /** What that tee needs. */
  readonly needed_m: number;
}

/**
 * How many laterals of a set can be flushed at once while it runs: as many as the water gives beside its emitters without any tee falling short.
 * What the flush loses on the way is taken as if it all ran to the tee with least to spare, losses growing with the 1.852th power of the flow: rather
 * one too few.
 */
export function flushable(
  supply: { readonly curve: SupplyCurve; readonly most_lps: number },
  { laterals, flow_lps, lost_m, behind_m, held_m, needed_m }: RunningSet,
  flush_lps: number,
): number {
  let count = 0;
  while (count < laterals) {
    const with_lps = flow_lps + (count + 1) * flush_lps;
    const more = (with_lps / flow_lps) ** 1.852;
    const there_m = Math.min(held_m, supplyHead_m(supply.curve, with_lps) - lost_m * more) - behind_m * more;
    if (with_lps > supply.most_lps || !(there_m >= needed_m)) break;
    count++;
  }
  return count;
}
