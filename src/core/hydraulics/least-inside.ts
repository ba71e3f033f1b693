import type { Inside } from "./bore.ts";
import { headLoss_m } from "./pipe-loss.ts";

/** Inside diameter, mm, at which a flow in L/s runs just at a velocity in m/s. 2 L/s at 1.5 m/s: 41.20258 mm (calculation handbook, check 4-44). */
export function leastInside_mm(flow_lps: number, velocity_mps: number): number {
  return Math.sqrt((4 * flow_lps * 1000) / (Math.PI * velocity_mps));
}

/** Wider than any pipe, mm. */
const widest_mm = 10_000;

/**
 * Inside diameter, mm, at which a flow in L/s loses just so much head, m, over a length, m; found by halving. 2 L/s, 120 m, 1.5 m by Hazen-Williams with
 * C 150: 56.00251 mm (calculation handbook, check 4-44).
 */
export function leastInsideForLoss_mm(
  pipe: Omit<Inside, "inside_mm">,
  flow_lps: number,
  length_m: number,
  loss_m: number,
): number {
  let narrow = 0;
  let wide = widest_mm;
  for (let round = 0; round < 60; round++) {
    const middle = (narrow + wide) / 2;
    if (headLoss_m({ ...pipe, inside_mm: middle }, length_m, flow_lps) > loss_m) narrow = middle;
    else wide = middle;
  }
  return wide;
}
