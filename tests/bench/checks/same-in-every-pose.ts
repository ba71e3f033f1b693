import type { LineIntervals } from "../../../src/core/plane/lines.ts";
import { createRandomParcel, fivePoses } from "../../support/parcels.ts";
import { laidOut, randomRows } from "./laid-out.ts";
import type { Verdict } from "./verdict.ts";

export const poseTolerance_m = 1e-6;

/** The same parcel and rows in five poses give the same pieces. `worst` is the largest shift of an end in metres. */
export function sameInEveryPose(seed: number): Verdict {
  const parcel = createRandomParcel(seed, 0.5);
  const wish = randomRows(parcel, seed);
  const faults: string[] = [];
  let worst = 0;
  for (const withSetbacks of [true, false]) {
    const [first, ...others] = fivePoses.map((pose) => laidOut(parcel, wish, pose, withSetbacks).pieces);
    for (const other of others) {
      const shift_m = first === undefined ? Number.POSITIVE_INFINITY : largestShift_m(first, other);
      worst = Math.max(worst, shift_m);
      if (!(shift_m <= poseTolerance_m))
        faults.push(`seed ${seed}, ${withSetbacks ? "with" : "no"} setbacks: ${shift_m} m`);
    }
  }
  return { faults, worst };
}

/** Infinite when the number of pieces of any line differs. */
export function largestShift_m(a: LineIntervals, b: LineIntervals): number {
  if (a.start.length !== b.start.length || a.start.some((start, i) => start !== b.start[i])) {
    return Number.POSITIVE_INFINITY;
  }
  return a.u.reduce((largest, u, i) => Math.max(largest, Math.abs(u - (b.u[i] ?? Number.NaN))), 0);
}
