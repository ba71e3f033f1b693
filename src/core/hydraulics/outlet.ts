/**
 * An emitter: q = nominal · (h / nominalHead)^exponent, h its pressure head. With `from_m` (compensating) that holds from that head on, and below it
 * the flow falls with the square root, down from what it is there. Nothing flows at or below no pressure.
 */
export interface EmitterLaw {
  readonly kind: "emitter";
  readonly nominal_lps: number;
  readonly nominalHead_m: number;
  readonly exponent: number;
  /** Least pressure head of the working range; null: a plain emitter. */
  readonly from_m: number | null;
}

/** A whole lateral as one outlet: its flow by the head at its inlet, a Chebyshev polynomial over a range of heads. */
export interface LateralCurve {
  readonly kind: "lateral";
  /** Total heads between which it holds. */
  readonly lowest_m: number;
  readonly highest_m: number;
  /** L/s, of the Chebyshev polynomials T0, T1, … over that range mapped to -1..1. */
  readonly coefficients: readonly number[];
}

export type Outlet = EmitterLaw | LateralCurve;
