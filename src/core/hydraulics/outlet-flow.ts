import { readLateralCurve } from "./lateral-curve.ts";
import type { EmitterLaw, LateralCurve, Outlet } from "./outlet.ts";

/** An emitter made ready to be worked out many times: q = factor · h^exponent from `from_m` on, lowFactor · √h below. */
export interface Jet {
  readonly factor: number;
  readonly exponent: number;
  /** The square root itself: exponent 0.5 throughout. */
  readonly isRoot: boolean;
  readonly from_m: number;
  readonly lowFactor: number;
  /** Flow and slope up to the head below which it is straight. */
  readonly straightSlope: number;
  readonly curve: LateralCurve | null;
}

/** A power below 1 starts off straight up, which no solver stands: below a hundredth of a millimetre of head the flow goes straight to nothing. */
export const straight_m = 1e-5;

/** An outlet made ready. */
export function jetOf(outlet: Outlet): Jet {
  if (outlet.kind === "lateral") {
    return { factor: 0, exponent: 1, isRoot: false, from_m: 0, lowFactor: 0, straightSlope: 0, curve: outlet };
  }
  const { exponent, from_m } = outlet;
  const factor = outlet.nominal_lps * outlet.nominalHead_m ** -exponent;
  const isRoot = exponent === 0.5;
  const least_m = isRoot ? 0 : Math.max(from_m ?? 0, 0);
  const lowFactor = least_m > 0 ? (factor * least_m ** exponent) / Math.sqrt(least_m) : 0;
  const straightFlow = least_m > straight_m ? lowFactor * Math.sqrt(straight_m) : factor * straight_m ** exponent;
  return {
    factor,
    exponent,
    isRoot,
    from_m: least_m,
    lowFactor,
    straightSlope: straightFlow / straight_m,
    curve: null,
  };
}

/**
 * Writes into `out` what leaves, L/s, and how fast it grows with the head, L/s per m: emitters by their pressure head, and a lateral by its total
 * head. Below no pressure an emitter draws in as it gives above: while a solver is on its way it must be able to come back.
 */
export function jetFlow(jet: Jet, pressure_m: number, height_m: number, out: Float64Array): void {
  if (jet.curve !== null) {
    readLateralCurve(jet.curve, pressure_m + height_m, out);
    return;
  }
  const head = Math.abs(pressure_m);
  if (head < straight_m) {
    out[0] = jet.straightSlope * pressure_m;
    out[1] = jet.straightSlope;
    return;
  }
  let flow: number;
  let exponent = 0.5;
  if (jet.isRoot) flow = jet.factor * Math.sqrt(head);
  else if (head < jet.from_m) flow = jet.lowFactor * Math.sqrt(head);
  else {
    exponent = jet.exponent;
    flow = exponent === 0 ? jet.factor : jet.factor * Math.exp(exponent * Math.log(head));
  }
  out[0] = pressure_m < 0 ? -flow : flow;
  out[1] = (exponent * flow) / head;
}

/** Flow of an emitter, L/s, at a pressure head, m: q = nominal · (h / nominal head)^exponent; see `EmitterLaw`. */
export function emitterFlow_lps(emitter: EmitterLaw, pressure_m: number): number {
  const out = new Float64Array(2);
  if (pressure_m > 0) jetFlow(jetOf(emitter), pressure_m, 0, out);
  return out[0] ?? 0;
}

/** Exponent of the emitter that gives two flows at two heads: ln(q1/q2) / ln(h1/h2). */
export function emitterExponent(flow1: number, flow2: number, head1_m: number, head2_m: number): number {
  return Math.log(flow1 / flow2) / Math.log(head1_m / head2_m);
}
