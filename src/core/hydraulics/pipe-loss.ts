import { type Bore, boreOf, type Inside } from "./bore.ts";
import { laminarReynolds } from "./friction-factor.ts";

/** Minus 2 over the natural logarithm of 10, and numbers at Re 4000, to as many places as EPANET has them. */
const a9 = -0.86858896;
const ab = 5.74 / 4000 ** 0.9;
const ac = -5.14214965799e-3;

/**
 * Writes into `out` the head lost in a length of pipe, m, and how fast it grows, m per L/s, at a flow of 0 or more, L/s. Two numbers are written
 * rather than returned because this is done for every pipe in every round.
 */
export function pipeLoss(bore: Bore, length_m: number, flow_lps: number, out: Float64Array): void {
  if (bore.law === 1) {
    const slope = flow_lps > 0 ? length_m * bore.power * Math.exp(0.852 * Math.log(flow_lps)) : 0;
    out[0] = slope * flow_lps;
    out[1] = 1.852 * slope;
  } else if (flow_lps <= bore.laminar_lps) {
    out[0] = length_m * bore.viscous * flow_lps;
    out[1] = length_m * bore.viscous;
  } else if (bore.law === 0) {
    blasius(bore, length_m, flow_lps, out);
  } else {
    epanetLoss(bore, length_m, flow_lps, out);
  }
}

function blasius(bore: Bore, length_m: number, flow_lps: number, out: Float64Array): void {
  const turbulent = Math.max(flow_lps, bore.turbulent_lps);
  const root = Math.sqrt(turbulent);
  const slope = length_m * bore.power * root * Math.sqrt(root);
  out[0] = slope * turbulent;
  out[1] = 1.75 * slope;
  if (flow_lps < turbulent) {
    const laminar_m = length_m * bore.viscous * bore.laminar_lps;
    const leap = (slope * turbulent - laminar_m) / (turbulent - bore.laminar_lps);
    out[0] = laminar_m + leap * (flow_lps - bore.laminar_lps);
    out[1] = leap;
  }
}

function epanetLoss(bore: Bore, length_m: number, flow_lps: number, out: Float64Array): void {
  const r = flow_lps / bore.laminar_lps;
  const square = length_m * bore.power * flow_lps;
  if (r >= 2) {
    const y1 = 5.74 * Math.exp(-0.9 * Math.log(r * laminarReynolds));
    const y2 = bore.roughness_ratio / 3.7 + y1;
    const y3 = a9 * Math.log(y2);
    const f = 1 / (y3 * y3);
    out[0] = f * square * flow_lps;
    out[1] = f * square * (2 + (1.8 * y1 * a9) / (y2 * y3));
    return;
  }
  const y2 = bore.roughness_ratio / 3.7 + ab;
  const y3 = a9 * Math.log(y2);
  const fa = 1 / (y3 * y3);
  const fb = (2 + ac / (y2 * y3)) * fa;
  const x1 = 7 * fa - fb;
  const x2 = 0.128 - 17 * fa + 2.5 * fb;
  const x3 = -0.128 + 13 * fa - 2 * fb;
  const x4 = 0.032 - 3 * fa + 0.5 * fb;
  const f = x1 + r * (x2 + r * (x3 + r * x4));
  out[0] = f * square * flow_lps;
  out[1] = square * (2 * f + r * (x2 + r * (2 * x3 + r * 3 * x4)));
}

/** Head lost in a length of pipe, m, at a flow, L/s. */
export function headLoss_m(inside: Inside, length_m: number, flow_lps: number): number {
  const out = new Float64Array(2);
  pipeLoss(boreOf(inside), length_m, Math.abs(flow_lps), out);
  return Math.sign(flow_lps) * (out[0] ?? 0);
}

/** Mean velocity, m/s, of a flow, L/s. */
export function velocity_mps(inside_mm: number, flow_lps: number): number {
  return flow_lps / 1000 / ((Math.PI / 4) * (inside_mm / 1000) ** 2);
}

/** Reynolds' number of a flow, L/s. */
export function reynolds(inside_mm: number, viscosity_m2ps: number, flow_lps: number): number {
  return (velocity_mps(inside_mm, flow_lps) * inside_mm) / 1000 / viscosity_m2ps;
}
