import type { LawCode } from "./friction-law.ts";

/** A size that pipe comes in. */
export interface SizeChoice {
  readonly inside_mm: number;
  readonly cost_pm: number;
}

/** Which size each pipe of a tree is to have, so that every place gets its head at the least cost. */
export interface SizingJob {
  /** The pipe that each goes on from; -1 from the source. Each comes after the one it goes on from. */
  readonly upstream: Int32Array;
  readonly length_m: Float64Array;
  readonly flow_lps: Float64Array;
  /** Total head wanted at its downstream end; -Infinity where none is. */
  readonly wanted_m: Float64Array;
  /** Smallest first. */
  readonly sizes: readonly SizeChoice[];
  /** Index of the smallest size each may have; null: any. */
  readonly least: Uint8Array | null;
  /** Total head at the source. */
  readonly source_m: number;
  readonly law: LawCode;
  readonly roughness: number;
  readonly viscosity_m2ps: number;
  readonly mostVelocity_mps: number;
  /** Pipe may not be wider than the one it goes on from. */
  readonly isTapering: boolean;
}

export interface Sizing {
  /** Index into the sizes, by pipe. */
  readonly size: Uint8Array;
  readonly cost: number;
  /** Total head at the downstream end of each. */
  readonly head_m: Float64Array;
}
