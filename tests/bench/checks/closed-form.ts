import { turn } from "../../../src/core/plane/axes.ts";
import { createRandomParcel, fivePoses } from "../../support/parcels.ts";
import { summed } from "../row-job.ts";
import { type LaidOut, laidOut, randomRows } from "./laid-out.ts";
import type { Verdict } from "./verdict.ts";

export const sumTolerance_relative = 1e-9;

/** The sum of the rows, without setbacks, against the closed form over the edges, in five poses. `worst` is the relative difference. */
export function closedForm(seed: number): Verdict {
  const parcel = createRandomParcel(seed);
  const wish = randomRows(parcel, seed);
  const faults: string[] = [];
  let worst = 0;
  for (const pose of fivePoses) {
    const rows = laidOut(parcel, wish, pose, false);
    const { length_m } = summed(rows.pieces);
    const expected_m = closedFormSum_m(rows);
    const off = Math.abs(length_m - expected_m) / Math.max(expected_m, 1e-3);
    worst = Math.max(worst, off);
    if (!(off <= sumTolerance_relative)) {
      faults.push(`seed ${seed}, turned ${pose.turn_deg} degrees: rows ${length_m} m, closed form ${expected_m} m`);
    }
  }
  return { faults, worst };
}

/**
 * Sum of the lines' lengths inside the rings without cutting a single row: an edge that meets m lines, the first at u, with a step of g
 * from line to line, adds ±(m·u + g·m·(m − 1) / 2). Rows end at edges with the land behind them (+) and begin at the others (−):
 * outer rings are counter-clockwise and holes clockwise on the map, so those are the edges that run to lower v.
 */
function closedFormSum_m({ parcel, axes, lines }: LaidOut): number {
  const uv = turn(parcel.rings.xy, axes);
  const { ringStart } = parcel.rings;
  let sum = 0;
  for (let r = 0; r + 1 < ringStart.length; r++) {
    const [from, to] = [ringStart[r] ?? 0, ringStart[r + 1] ?? 0];
    for (let p = from; p < to; p++) {
      const q = p + 1 < to ? p + 1 : from;
      const [u1, v1, u2, v2] = [uv[2 * p] ?? 0, uv[2 * p + 1] ?? 0, uv[2 * q] ?? 0, uv[2 * q + 1] ?? 0];
      const first = Math.ceil((Math.min(v1, v2) - lines.first_m) / lines.spacing_m);
      const m = Math.ceil((Math.max(v1, v2) - lines.first_m) / lines.spacing_m) - first;
      if (m <= 0) continue;
      const slope = (u2 - u1) / (v2 - v1);
      const u = u1 + (lines.first_m + first * lines.spacing_m - v1) * slope;
      sum += Math.sign(v1 - v2) * (m * u + (slope * lines.spacing_m * m * (m - 1)) / 2);
    }
  }
  return sum;
}
