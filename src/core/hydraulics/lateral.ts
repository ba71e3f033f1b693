import type { LawCode } from "./friction-law.ts";
import type { EmitterLaw } from "./outlet.ts";

/** A lateral: a riser, then hose with emitters along it. */
export interface Lateral {
  /** Emitters along the hose from where it begins, ascending. */
  readonly at_m: Float64Array;
  /** Height of each. */
  readonly height_m: Float64Array;
  readonly emitter: EmitterLaw;
  readonly hoseInside_mm: number;
  readonly law: LawCode;
  readonly roughness: number;
  /** What each emitter's barb counts as more hose. */
  readonly barb_m: number;
  /** Pipe from the tee to where the hose begins. */
  readonly riser_m: number;
  readonly riserInside_mm: number;
  readonly viscosity_m2ps: number;
}

/** A lateral at some inlet head. */
export interface LateralState {
  /** Total head at the tee. */
  readonly inlet_m: number;
  readonly flow_lps: number;
  /** By how much the flow grows with the head at the tee, L/s per m. */
  readonly growth: number;
  /** By emitter: total head, and flow. */
  readonly head_m: Float64Array;
  readonly outflow_lps: Float64Array;
}
