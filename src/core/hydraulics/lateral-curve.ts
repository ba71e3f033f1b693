import type { LateralCurve } from "./outlet.ts";

/**
 * Writes into `out` a lateral's flow, L/s, at a total head at its inlet, m, and how fast it grows, L/s per m: the Chebyshev polynomial by Clenshaw's
 * rule, beyond its range straight on as at the end of it.
 */
export function readLateralCurve(curve: LateralCurve, inlet_m: number, out: Float64Array): void {
  const { lowest_m, highest_m, coefficients } = curve;
  const half_m = (highest_m - lowest_m) / 2;
  const reach = half_m > 0 ? (inlet_m - lowest_m - half_m) / half_m : 0;
  const x = Math.min(1, Math.max(-1, reach));
  let value = 0;
  let before = 0;
  let slope = 0;
  let slopeBefore = 0;
  for (let k = coefficients.length - 1; k >= 1; k--) {
    const next = 2 * x * value - before + (coefficients[k] ?? 0);
    const nextSlope = 2 * value + 2 * x * slope - slopeBefore;
    before = value;
    value = next;
    slopeBefore = slope;
    slope = nextSlope;
  }
  const flow = x * value - before + (coefficients[0] ?? 0);
  const growth = value + x * slope - slopeBefore;
  out[0] = flow + growth * (reach - x);
  out[1] = half_m > 0 ? growth / half_m : 0;
}

/** A lateral's flow, L/s, at a total head at its inlet, m; never below none. */
export function lateralFlow_lps(curve: LateralCurve, inlet_m: number): number {
  const out = new Float64Array(2);
  readLateralCurve(curve, inlet_m, out);
  return Math.max(0, out[0] ?? 0);
}
