import type { Outlet } from "./outlet.ts";

/**
 * A tree of pipes under pressure, as parallel arrays by node. Node 0 is the source; every other node comes after the one it is fed from, and its
 * pipe is the one that leads to it.
 */
export interface Network {
  /** -1 for the source. */
  readonly upstream: Int32Array;
  /** Of the pipe to the node, with what fittings count as more pipe. */
  readonly length_m: Float64Array;
  readonly inside_mm: Float64Array;
  /** `LawCode` of the pipe. */
  readonly law: Uint8Array;
  /** C of Hazen-Williams; roughness in mm for EPANET's law; not used by Blasius. */
  readonly roughness: Float64Array;
  /** Fittings as so many velocity heads. */
  readonly minor: Float64Array;
  /** Of the node: pressure head is total head less this. */
  readonly height_m: Float64Array;
  /** A regulator at the upstream end of the pipe: pressure head right after it at most (above the height of the upstream node); NaN where none is. */
  readonly regulator_m: Float64Array;
  /** Index into `outlets`; -1 where no water leaves. */
  readonly outlet: Int32Array;
  readonly outlets: readonly Outlet[];
  readonly viscosity_m2ps: number;
}

/**
 * What a source gives: total head by flow, flows ascending from 0, heads never rising; straight between the points, and past the last one on
 * as between the last two. One point: that head at any flow.
 */
export interface SupplyCurve {
  readonly flow_lps: Float64Array;
  readonly head_m: Float64Array;
}

/** Heads and flows of a network. */
export interface Solution {
  /** Total head, by node. */
  readonly head_m: Float64Array;
  /** In the pipe to the node; in the source what it gives. */
  readonly flow_lps: Float64Array;
  /** Leaving at the node. */
  readonly outflow_lps: Float64Array;
  /** Outlets that get no water: the pressure there is not above nothing. */
  readonly dry: number;
  readonly rounds: number;
  readonly isSettled: boolean;
}
