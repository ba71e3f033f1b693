import type { LineIntervals, Lines } from "./lines.ts";
import { distanceSlack_m, snap_m } from "./tolerance.ts";

/**
 * The parts of parallel lines that lie within a segment's distance of that segment: a band is a stadium (all points nearer than
 * `distance_m`), convex, so a line meets it in one interval with ends in closed form. Bands of one line that overlap are united;
 * each end keeps the cause of the segment that made it.
 *
 *            left flank   ________________  right flank
 *      round the start  (  p ---------- q  )  round the end
 *
 * Segments: u1, v1, u2, v2 in turned metres. A point is a segment without length; a distance of 0 makes no band.
 * Bands are open: a line exactly at the distance is not cut (to half a nanometre, see `distanceSlack_m`), nor is one that grazes a
 * band for less than a micrometre.
 *
 * Segments that follow one another along an outline overlap on most lines they share: they are united as they come, which leaves few
 * intervals a line to sort.
 */
export function sweepBands(
  segments: Float64Array,
  distance_m: Float64Array,
  cause: Int32Array,
  lines: Lines,
): LineIntervals {
  const found: FoundBands = {
    u: new Float64Array(2 * (4 * lines.count + distance_m.length)),
    causes: new Int32Array(2 * (4 * lines.count + distance_m.length)),
    before: new Int32Array(4 * lines.count + distance_m.length),
    newest: new Int32Array(lines.count).fill(-1),
    bands: 0,
  };
  for (let s = 0; s < distance_m.length; s++) {
    const reach = Number(distance_m[s]) - distanceSlack_m;
    if (reach > 0) findBands(found, segments, s, reach, Number(cause[s]), lines);
  }
  return unitedBands(found);
}

/** Bands as they are found: band n runs from u[2n] to u[2n + 1]; `newest` is the last band of each line and `before` the one ahead of it, -1 for none. */
interface FoundBands {
  u: Float64Array;
  causes: Int32Array;
  before: Int32Array;
  readonly newest: Int32Array;
  bands: number;
}

/** The band of one segment on every line it reaches. */
function findBands(
  found: FoundBands,
  segments: Float64Array,
  s: number,
  reach: number,
  why: number,
  lines: Lines,
): void {
  const { first_m, spacing_m } = lines;
  const rises = Number(segments[4 * s + 1]) <= Number(segments[4 * s + 3]);
  const p = rises ? 4 * s : 4 * s + 2;
  const q = rises ? 4 * s + 2 : 4 * s;
  const u1 = Number(segments[p]);
  const v1 = Number(segments[p + 1]);
  const u2 = Number(segments[q]);
  const v2 = Number(segments[q + 1]);
  const length = Math.sqrt((u2 - u1) * (u2 - u1) + (v2 - v1) * (v2 - v1));
  const alongU = length > 0 ? (u2 - u1) / length : 1;
  const alongV = length > 0 ? (v2 - v1) / length : 0;
  const slope = (u2 - u1) / (v2 - v1);
  const leftLow = v1 + reach * alongU;
  const leftHigh = v2 + reach * alongU;
  const rightLow = v1 - reach * alongU;
  const rightHigh = v2 - reach * alongU;
  const leftAt = u1 - reach * alongV;
  const rightAt = u1 + reach * alongV;
  const first = Math.max(0, Math.ceil((v1 - reach - first_m) / spacing_m));
  const last = Math.min(lines.count - 1, Math.floor((v2 + reach - first_m) / spacing_m));
  while (found.bands + last - first >= found.before.length) widen(found);
  const { u, causes, before, newest } = found;
  let bands = found.bands;
  for (let i = first; i <= last; i++) {
    const v = first_m + i * spacing_m;
    const from =
      v <= leftLow
        ? u1 - halfChord(reach, v - v1)
        : v >= leftHigh
          ? u2 - halfChord(reach, v - v2)
          : leftAt + (v - leftLow) * slope;
    const to =
      v <= rightLow
        ? u1 + halfChord(reach, v - v1)
        : v >= rightHigh
          ? u2 + halfChord(reach, v - v2)
          : rightAt + (v - rightLow) * slope;
    if (to - from <= snap_m) continue;
    const n = Number(newest[i]);
    if (n >= 0 && from < Number(u[2 * n + 1]) && to > Number(u[2 * n])) {
      if (from < Number(u[2 * n])) {
        u[2 * n] = from;
        causes[2 * n] = why;
      }
      if (to > Number(u[2 * n + 1])) {
        u[2 * n + 1] = to;
        causes[2 * n + 1] = why;
      }
      continue;
    }
    u[2 * bands] = from;
    u[2 * bands + 1] = to;
    causes[2 * bands] = why;
    causes[2 * bands + 1] = why;
    before[bands] = n;
    newest[i] = bands++;
  }
  found.bands = bands;
}

/** Room for twice as many bands. */
function widen(found: FoundBands): void {
  const room = 2 * found.before.length;
  const { u, causes, before } = found;
  found.u = new Float64Array(2 * room);
  found.u.set(u);
  found.causes = new Int32Array(2 * room);
  found.causes.set(causes);
  found.before = new Int32Array(room);
  found.before.set(before);
}

/** Half the chord of a circle at a height above its centre; 0 at and beyond the rim. */
function halfChord(radius: number, height: number): number {
  return Math.sqrt(Math.max(0, (radius - height) * (radius + height)));
}

/** Bands of each line sorted by where they begin and united where they overlap. Those that only touch stay apart: a point between is free. */
function unitedBands({ u, causes, newest, before, bands }: FoundBands): LineIntervals {
  const count = newest.length;
  const start = new Int32Array(count + 1);
  const unitedU = new Float64Array(2 * bands);
  const unitedCause = new Int32Array(2 * bands);
  const order: number[] = [];
  let n = 0;
  for (let i = 0; i < count; i++) {
    // Insertion sort, oldest first among those that begin alike: there are few on a line.
    let held = 0;
    for (let band = Number(newest[i]); band >= 0; band = Number(before[band])) {
      const from = Number(u[2 * band]);
      let k = held++;
      for (; k > 0 && Number(u[2 * Number(order[k - 1])]) >= from; k--) order[k] = Number(order[k - 1]);
      order[k] = band;
    }
    const first = n;
    for (let k = 0; k < held; k++) {
      const band = Number(order[k]);
      const from = Number(u[2 * band]);
      const to = Number(u[2 * band + 1]);
      if (n > first && from < Number(unitedU[2 * n - 1])) {
        if (to > Number(unitedU[2 * n - 1])) {
          unitedU[2 * n - 1] = to;
          unitedCause[2 * n - 1] = Number(causes[2 * band + 1]);
        }
      } else {
        unitedU[2 * n] = from;
        unitedU[2 * n + 1] = to;
        unitedCause[2 * n] = Number(causes[2 * band]);
        unitedCause[2 * n + 1] = Number(causes[2 * band + 1]);
        n++;
      }
    }
    start[i + 1] = n;
  }
  return { start, u: unitedU.subarray(0, 2 * n), cause: unitedCause.subarray(0, 2 * n) };
}
