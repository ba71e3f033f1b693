import { turnBack } from "../../../src/core/plane/axes.ts";
import { createRandomParcel, distanceToPiece, fivePoses, type Point, toPoints } from "../../support/parcels.ts";
import { between, createRandom } from "../../support/random.ts";
import { drawnPieces, eachPiece, type LaidOut, laidOut, randomRows } from "./laid-out.ts";
import type { Verdict } from "./verdict.ts";

/** What a distance may fall short of. */
export const distanceTolerance_m = 1e-9;
/** Places nearer than this to a setback or an edge are not asked whether a row should stand there. */
const unsure_m = 1e-6;
const leastSetback_m = 0.5;
const placesAsked = 40;

/**
 * In five poses: every row piece keeps each edge's setback at its nearest approach, and random places on the lines are planted exactly
 * when they lie inside and keep every setback. `worst` is the largest shortfall in metres.
 */
export function distancesKept(seed: number): Verdict {
  const parcel = createRandomParcel(seed, leastSetback_m);
  const wish = randomRows(parcel, seed);
  const faults: string[] = [];
  let worst = 0;
  for (const pose of fivePoses) {
    const rows = laidOut(parcel, wish, pose, true);
    const where = `seed ${seed}, turned ${pose.turn_deg} degrees`;
    const shortfall = largestShortfall_m(rows);
    worst = Math.max(worst, shortfall);
    if (shortfall > distanceTolerance_m) faults.push(`${where}: a row is ${shortfall} m too near to an edge`);
    faults.push(...wrongPlaces(rows, seed).map((fault) => `${where}: ${fault}`));
  }
  return { faults, worst };
}

function largestShortfall_m(rows: LaidOut): number {
  const { xy, distance_m } = rows.parcel.bands;
  let shortfall = 0;
  for (const row of drawnPieces(rows)) {
    for (let i = 0; i < distance_m.length; i++) {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = xy.subarray(4 * i, 4 * i + 4);
      const apart = distanceBetween(row, [
        [x1, y1],
        [x2, y2],
      ]);
      shortfall = Math.max(shortfall, (distance_m[i] ?? 0) - apart);
    }
  }
  return shortfall;
}

/** Nearest approach of two straight pieces: 0 where they cross, else at one of the four ends. */
function distanceBetween([a, b]: readonly [Point, Point], [p, q]: readonly [Point, Point]): number {
  if (side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0) return 0;
  return Math.min(
    distanceToPiece(...a, ...p, ...q),
    distanceToPiece(...b, ...p, ...q),
    distanceToPiece(...p, ...a, ...b),
    distanceToPiece(...q, ...a, ...b),
  );
}

function side(a: Point, b: Point, p: Point): number {
  return Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
}

/** Random places on the lines where a row stands though it should not, or the other way round. */
function wrongPlaces(rows: LaidOut, seed: number): string[] {
  const { lines, axes, pieces, parcel } = rows;
  const { xy, distance_m } = parcel.bands;
  const rings = toPoints(parcel.rings);
  const random = createRandom(seed ^ 0xa5c);
  const wrong: string[] = [];
  const reach_m = Math.sqrt(1e5);
  for (let k = 0; k < placesAsked; k++) {
    const line = Math.floor(between(random, 0, lines.count));
    const u_m = between(random, -reach_m, reach_m);
    const [x, y] = turnBack(u_m, lines.first_m + line * lines.spacing_m, axes);
    let leastSpare_m = Number.POSITIVE_INFINITY;
    for (let i = 0; i < distance_m.length; i++) {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = xy.subarray(4 * i, 4 * i + 4);
      leastSpare_m = Math.min(leastSpare_m, distanceToPiece(x, y, x1, y1, x2, y2) - (distance_m[i] ?? 0));
    }
    if (Math.abs(leastSpare_m) < unsure_m) continue;
    const mayStand = leastSpare_m > 0 && isInside(rings, x, y);
    let stands = false;
    eachPiece(pieces, (of, from_m, to_m) => {
      if (of === line && from_m <= u_m && u_m <= to_m) stands = true;
    });
    if (stands !== mayStand)
      wrong.push(`${stands ? "planted" : "not planted"} at ${x}, ${y}, ${leastSpare_m} m to spare`);
  }
  return wrong;
}

function isInside(rings: readonly (readonly Point[])[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) {
    ring.forEach(([x1, y1], i) => {
      const [x2, y2] = ring[(i + 1) % ring.length] ?? [0, 0];
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1)) inside = !inside;
    });
  }
  return inside;
}
