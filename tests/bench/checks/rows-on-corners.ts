import { fivePoses, type Point, toRingSet } from "../../support/parcels.ts";
import { createRandom, wholeBetween } from "../../support/random.ts";
import { laidOut } from "./laid-out.ts";
import { largestShift_m, poseTolerance_m } from "./same-in-every-pose.ts";
import type { Verdict } from "./verdict.ts";

/**
 * A parcel whose corners all have whole coordinates, with a row at every whole metre: rows run through every corner and along every level
 * edge, spikes and touching edges among them. Five poses must give the same pieces. `worst` is the largest shift of an end in metres.
 */
export function rowsOnCorners(seed: number): Verdict {
  const random = createRandom(seed ^ 0xc0a);
  const corners = wholeBetween(random, 3, 14);
  const ring = Array.from({ length: corners }, (_, i): Point => {
    const angle = (2 * Math.PI * (i + 0.8 * random())) / corners;
    const away = wholeBetween(random, 2, 24);
    return [Math.round(away * Math.cos(angle)), Math.round(away * Math.sin(angle))];
  });
  const parcel = {
    seed,
    rings: toRingSet([ring]),
    bands: { xy: new Float64Array(0), distance_m: new Float64Array(0) },
  };
  const wish = { bearing_deg: 90, spacing_m: 1, first_m: -25, count: 51 };
  const [first, ...others] = fivePoses.map((pose) => laidOut(parcel, wish, pose, false).pieces);
  let worst = 0;
  for (const other of others) {
    worst = Math.max(worst, first === undefined ? Number.POSITIVE_INFINITY : largestShift_m(first, other));
  }
  return { faults: worst <= poseTolerance_m ? [] : [`seed ${seed}: poses differ by ${worst} m`], worst };
}
