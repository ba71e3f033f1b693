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
 */
export function sweepBands(
  segments: Float64Array,
  distance_m: Float64Array,
  cause: Int32Array,
  lines: Lines,
): LineIntervals {
  const { first_m, spacing_m, count } = lines;
  const total = distance_m.length;
  const start = new Int32Array(count + 1);
  const firstLine = new Int32Array(total);
  const lastLine = new Int32Array(total);
  for (let s = 0; s < total; s++) {
    const reach = Number(distance_m[s]) - distanceSlack_m;
    const v1 = Number(segments[4 * s + 1]);
    const v2 = Number(segments[4 * s + 3]);
    const first = Math.max(0, Math.ceil((Math.min(v1, v2) - reach - first_m) / spacing_m));
    const last = Math.min(count - 1, Math.floor((Math.max(v1, v2) + reach - first_m) / spacing_m));
    firstLine[s] = first;
    lastLine[s] = reach > 0 ? last : -1;
    if (reach > 0) for (let i = first; i <= last; i++) start[i + 1] = Number(start[i + 1]) + 1;
  }
  for (let i = 0; i < count; i++) start[i + 1] = Number(start[i + 1]) + Number(start[i]);
  const bands = Number(start[count]);
  const from = new Float64Array(bands);
  const to = new Float64Array(bands);
  const owner = new Int32Array(bands);
  const filled = start.slice(0, count);
  for (let s = 0; s < total; s++) {
    const last = Number(lastLine[s]);
    let i = Number(firstLine[s]);
    if (i > last) continue;
    const reach = Number(distance_m[s]) - distanceSlack_m;
    const rises = Number(segments[4 * s + 1]) <= Number(segments[4 * s + 3]);
    const p = rises ? 4 * s : 4 * s + 2;
    const q = rises ? 4 * s + 2 : 4 * s;
    const u1 = Number(segments[p]);
    const v1 = Number(segments[p + 1]);
    const u2 = Number(segments[q]);
    const v2 = Number(segments[q + 1]);
    const length = Math.hypot(u2 - u1, v2 - v1);
    const alongU = length > 0 ? (u2 - u1) / length : 1;
    const alongV = length > 0 ? (v2 - v1) / length : 0;
    const slope = (u2 - u1) / (v2 - v1);
    const leftLow = v1 + reach * alongU;
    const leftHigh = v2 + reach * alongU;
    const rightLow = v1 - reach * alongU;
    const rightHigh = v2 - reach * alongU;
    const leftAt = u1 - reach * alongV;
    const rightAt = u1 + reach * alongV;
    for (; i <= last; i++) {
      const v = first_m + i * spacing_m;
      const n = Number(filled[i]);
      filled[i] = n + 1;
      from[n] =
        v <= leftLow
          ? u1 - halfChord(reach, v - v1)
          : v >= leftHigh
            ? u2 - halfChord(reach, v - v2)
            : leftAt + (v - leftLow) * slope;
      to[n] =
        v <= rightLow
          ? u1 + halfChord(reach, v - v1)
          : v >= rightHigh
            ? u2 + halfChord(reach, v - v2)
            : rightAt + (v - rightLow) * slope;
      owner[n] = s;
    }
  }
  return unitedBands(start, from, to, owner, cause, count);
}

/** Half the chord of a circle at a height above its centre; 0 at and beyond the rim. */
function halfChord(radius: number, height: number): number {
  return Math.sqrt(Math.max(0, (radius - height) * (radius + height)));
}

/** Bands of each line sorted by where they begin and united where they overlap. Those that only touch stay apart: a point between is free. */
function unitedBands(
  start: Int32Array,
  from: Float64Array,
  to: Float64Array,
  owner: Int32Array,
  cause: Int32Array,
  count: number,
): LineIntervals {
  const unitedStart = new Int32Array(count + 1);
  const u = new Float64Array(2 * from.length);
  const causes = new Int32Array(2 * from.length);
  let n = 0;
  for (let i = 0; i < count; i++) {
    const begin = Number(start[i]);
    const end = Number(start[i + 1]);
    for (let a = begin + 1; a < end; a++) {
      const f = Number(from[a]);
      const t = Number(to[a]);
      const o = Number(owner[a]);
      let b = a - 1;
      while (b >= begin && Number(from[b]) > f) {
        from[b + 1] = Number(from[b]);
        to[b + 1] = Number(to[b]);
        owner[b + 1] = Number(owner[b]);
        b--;
      }
      from[b + 1] = f;
      to[b + 1] = t;
      owner[b + 1] = o;
    }
    const first = n;
    for (let a = begin; a < end; a++) {
      const f = Number(from[a]);
      const t = Number(to[a]);
      if (t - f <= snap_m) continue;
      const why = Number(cause[Number(owner[a])]);
      if (n > first && f < Number(u[2 * n - 1])) {
        if (t > Number(u[2 * n - 1])) {
          u[2 * n - 1] = t;
          causes[2 * n - 1] = why;
        }
      } else {
        u[2 * n] = f;
        u[2 * n + 1] = t;
        causes[2 * n] = why;
        causes[2 * n + 1] = why;
        n++;
      }
    }
    unitedStart[i + 1] = n;
  }
  return { start: unitedStart, u: u.subarray(0, 2 * n), cause: causes.subarray(0, 2 * n) };
}
