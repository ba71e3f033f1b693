import type { SupplyCurve } from "./network.ts";
import { jetFlow } from "./outlet-flow.ts";
import { pipeLoss } from "./pipe-loss.ts";
import type { PreparedNetwork } from "./prepared-network.ts";
import { meetSupply } from "./read-supply.ts";

/** Where a solver is: its heads and flows, which outlets are closed and which regulators hold, and room to work in. All by node. */
export interface Workings {
  readonly head_m: Float64Array;
  readonly flow_lps: Float64Array;
  /** 1: gets no water. */
  readonly closed: Uint8Array;
  /** 1: the regulator at the upstream end of the pipe holds the pressure down. */
  readonly holds: Uint8Array;
  /** What flows on from the node, as base + growth · head. */
  readonly base: Float64Array;
  readonly growth: Float64Array;
  /** A pipe's loss near its flow, as slope · flow - offset. */
  readonly slope: Float64Array;
  readonly offset: Float64Array;
}

/** Room for a network of so many nodes. */
export function createWorkings(nodes: number): Workings {
  return {
    head_m: new Float64Array(nodes),
    flow_lps: new Float64Array(nodes),
    closed: new Uint8Array(nodes),
    holds: new Uint8Array(nodes),
    base: new Float64Array(nodes),
    growth: new Float64Array(nodes),
    slope: new Float64Array(nodes),
    offset: new Float64Array(nodes),
  };
}

/** Straightens the loss of every pipe at its flow. */
export function straightenPipes(prepared: PreparedNetwork, { flow_lps, slope, offset }: Workings): void {
  const { bore, bores, hasMinor, network } = prepared;
  const { length_m, minor } = network;
  const out = new Float64Array(2);
  for (let i = 1; i < flow_lps.length; i++) {
    const kind = bores[bore[i] ?? 0];
    if (kind === undefined) continue;
    const flow = flow_lps[i] ?? 0;
    const size = Math.abs(flow);
    pipeLoss(kind, length_m[i] ?? 0, size, out);
    let loss = out[0] ?? 0;
    let steep = out[1] ?? 0;
    if (hasMinor) {
      const bend = (minor[i] ?? 0) * kind.velocityHead * size;
      loss += bend * size;
      steep += 2 * bend;
    }
    slope[i] = steep;
    offset[i] = flow < 0 ? loss + steep * flow : steep * flow - loss;
  }
}

/**
 * From the ends to the source: straightens every outlet at its head and folds each pipe into the node it comes from, so that each node knows what flows
 * on from it by its own head. `growth / (1 + growth · slope)` and not `1 / slope`, which has no bounds where nothing flows.
 */
export function foldTree(prepared: PreparedNetwork, at: Workings): void {
  const { network, jets } = prepared;
  const { upstream, height_m, outlet, regulator_m } = network;
  const { head_m, closed, holds, base, growth, slope, offset } = at;
  const out = new Float64Array(2);
  base.fill(0);
  growth.fill(0);
  for (let i = head_m.length - 1; i >= 0; i--) {
    const jet = jets[outlet[i] ?? -1];
    let constant = base[i] ?? 0;
    let grows = growth[i] ?? 0;
    if (jet !== undefined && closed[i] === 0) {
      const head = head_m[i] ?? 0;
      const height = height_m[i] ?? 0;
      jetFlow(jet, head - height, height, out);
      const steep = out[1] ?? 0;
      constant += (out[0] ?? 0) - steep * head;
      grows += steep;
      base[i] = constant;
      growth[i] = grows;
    }
    if (i === 0) return;
    const from = upstream[i] ?? 0;
    const share = 1 / (1 + grows * (slope[i] ?? 0));
    const folded = (constant + grows * (offset[i] ?? 0)) * share;
    if (holds[i] === 1) {
      const held_m = (height_m[from] ?? 0) + (regulator_m[i] ?? 0);
      base[from] = (base[from] ?? 0) + folded + grows * share * held_m;
    } else {
      base[from] = (base[from] ?? 0) + folded;
      growth[from] = (growth[from] ?? 0) + grows * share;
    }
  }
}

/**
 * From the source to the ends: new heads and flows, the way to them cut down to `step`. Gives the most that a head has changed, m; without bounds where
 * a flow went past the leap from laminar flow. Where `stopsAtLeap` such a flow stops in it, for else it could jump to and fro without end.
 */
export function unfoldTree(
  prepared: PreparedNetwork,
  supply: SupplyCurve,
  at: Workings,
  step: number,
  stopsAtLeap: boolean,
): number {
  const { bore, bores, hasLeaps, network } = prepared;
  const { upstream, height_m, regulator_m } = network;
  const { head_m, flow_lps, holds, base, growth, slope, offset } = at;
  const out = new Float64Array(2);
  meetSupply(supply, base[0] ?? 0, growth[0] ?? 0, out);
  let most_m = Math.abs((out[0] ?? 0) - (head_m[0] ?? 0));
  head_m[0] = out[0] ?? 0;
  flow_lps[0] = out[1] ?? 0;
  for (let i = 1; i < head_m.length; i++) {
    const from = upstream[i] ?? 0;
    const enters_m = holds[i] === 1 ? (height_m[from] ?? 0) + (regulator_m[i] ?? 0) : (head_m[from] ?? 0);
    const constant = base[i] ?? 0;
    const grows = growth[i] ?? 0;
    const steep = slope[i] ?? 0;
    const drive = enters_m + (offset[i] ?? 0);
    const share = 1 / (1 + grows * steep);
    const before = head_m[i] ?? 0;
    const change = (drive - steep * constant) * share - before;
    const size = Math.abs(change);
    if (size > most_m) most_m = size;
    head_m[i] = before + step * change;
    const old = flow_lps[i] ?? 0;
    const flow = old + step * ((constant + grows * drive) * share - old);
    flow_lps[i] = flow;
    if (hasLeaps) {
      const kind = bores[bore[i] ?? 0];
      if (kind !== undefined && kind.law === 0 && leaps(old, flow, kind.laminar_lps)) {
        most_m = Number.POSITIVE_INFINITY;
        if (stopsAtLeap) flow_lps[i] = Math.sign(flow) * (kind.laminar_lps + kind.turbulent_lps) * 0.5;
      }
    }
  }
  return most_m;
}

function leaps(old: number, now: number, laminar_lps: number): boolean {
  return Math.abs(old) < laminar_lps !== Math.abs(now) < laminar_lps;
}
