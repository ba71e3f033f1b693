import type { LineIntervals, Lines } from "./lines.ts";
import { snap_m } from "./tolerance.ts";

/**
 * The parts of parallel lines that lie inside rings, by the even-odd rule, boundary included; cause = index of the point that begins
 * the edge crossed there.
 *
 * A point within a micrometre of a line counts as on it. A line that passes through points is looked at from just below and from just
 * above and the two answers are united, so that a line along an edge is inside whatever the pose:
 *
 *      enters, leaves      touches a corner      runs along an edge      crosses a hole
 *        ___/‾‾‾\___          ___/\___             ___________             _____ _____
 *       --[=======]--        --------             [===========]           [===]-[===]
 *
 * Cost: points + crossings, plus sorting each line's few crossings.
 */
export function sweepRings(uv: Float64Array, ringStart: Int32Array, lines: Lines): LineIntervals {
  const points = uv.length / 2;
  const place = new Float64Array(points);
  let onLine: Uint8Array | null = null;
  for (let p = 0; p < points; p++) {
    const exact = (Number(uv[2 * p + 1]) - lines.first_m) / lines.spacing_m;
    const nearest = Math.round(exact);
    const isOn = Math.abs(exact - nearest) * lines.spacing_m <= snap_m;
    place[p] = isOn ? nearest : exact;
    if (isOn && nearest >= 0 && nearest < lines.count) {
      onLine ??= new Uint8Array(lines.count);
      onLine[nearest] = 1;
    }
  }
  const next = followingPoints(ringStart, points);
  const above = paired(crossings(uv, place, next, lines, true, null), lines.count);
  if (onLine === null) return above;
  const below = paired(crossings(uv, place, next, lines, false, onLine), lines.count);
  return united(above, below, lines.count);
}

interface Crossings {
  readonly start: Int32Array;
  readonly u: Float64Array;
  readonly edge: Int32Array;
}

/** For each point the one its edge runs to. */
function followingPoints(ringStart: Int32Array, points: number): Int32Array {
  const next = new Int32Array(points);
  for (let r = 0; r + 1 < ringStart.length; r++) {
    const from = Number(ringStart[r]);
    const to = Number(ringStart[r + 1]);
    for (let p = from; p < to; p++) next[p] = p + 1 < to ? p + 1 : from;
  }
  return next;
}

/**
 * Crossings of every edge with the lines, sorted along each line. Half-open, so each line has an even number of them:
 * from above an edge from place a to place b (a < b) meets lines a <= i < b, from below a < i <= b. `only` limits to marked lines.
 */
function crossings(
  uv: Float64Array,
  place: Float64Array,
  next: Int32Array,
  lines: Lines,
  fromAbove: boolean,
  only: Uint8Array | null,
): Crossings {
  const { count } = lines;
  const points = place.length;
  const start = new Int32Array(count + 1);
  for (let p = 0; p < points; p++) {
    const a = Number(place[p]);
    const b = Number(place[Number(next[p])]);
    const first = firstLine(Math.min(a, b), fromAbove);
    const last = lastLine(Math.max(a, b), fromAbove, count);
    for (let i = first; i <= last; i++) if (only === null || only[i] === 1) start[i + 1] = Number(start[i + 1]) + 1;
  }
  for (let i = 0; i < count; i++) start[i + 1] = Number(start[i + 1]) + Number(start[i]);
  const total = Number(start[count]);
  const u = new Float64Array(total);
  const edge = new Int32Array(total);
  const filled = start.slice(0, count);
  for (let p = 0; p < points; p++) {
    const q = Number(next[p]);
    const a = Number(place[p]);
    const b = Number(place[q]);
    const first = firstLine(Math.min(a, b), fromAbove);
    const last = lastLine(Math.max(a, b), fromAbove, count);
    if (first > last) continue;
    const u1 = Number(uv[2 * p]);
    const v1 = Number(uv[2 * p + 1]);
    const u2 = Number(uv[2 * q]);
    const slope = (u2 - u1) / (Number(uv[2 * q + 1]) - v1);
    for (let i = first; i <= last; i++) {
      if (only !== null && only[i] !== 1) continue;
      const n = Number(filled[i]);
      filled[i] = n + 1;
      u[n] = i === a ? u1 : i === b ? u2 : u1 + (lines.first_m + i * lines.spacing_m - v1) * slope;
      edge[n] = p;
    }
  }
  for (let i = 0; i < count; i++) sortAlong(u, edge, Number(start[i]), Number(start[i + 1]));
  return { start, u, edge };
}

function firstLine(low: number, fromAbove: boolean): number {
  return Math.max(0, fromAbove ? Math.ceil(low) : Math.floor(low) + 1);
}

function lastLine(high: number, fromAbove: boolean, count: number): number {
  return Math.min(count - 1, fromAbove ? Math.ceil(high) - 1 : Math.floor(high));
}

/** Insertion sort for the few crossings of a line; a line with many is sorted by index. */
function sortAlong(u: Float64Array, edge: Int32Array, from: number, to: number): void {
  if (to - from > 40) {
    const order = Array.from({ length: to - from }, (_, i) => from + i).sort((i, j) => Number(u[i]) - Number(u[j]));
    const sortedU = order.map((i) => Number(u[i]));
    const sortedEdge = order.map((i) => Number(edge[i]));
    u.set(sortedU, from);
    edge.set(sortedEdge, from);
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const value = Number(u[i]);
    const e = Number(edge[i]);
    let j = i - 1;
    while (j >= from && Number(u[j]) > value) {
      u[j + 1] = Number(u[j]);
      edge[j + 1] = Number(edge[j]);
      j--;
    }
    u[j + 1] = value;
    edge[j + 1] = e;
  }
}

/** Crossings taken two by two; parts that touch become one, parts without length go. */
function paired(crossed: Crossings, count: number): LineIntervals {
  const start = new Int32Array(count + 1);
  const { u, edge } = crossed;
  let n = 0;
  for (let i = 0; i < count; i++) {
    const begin = n;
    for (let c = Number(crossed.start[i]); c + 1 < Number(crossed.start[i + 1]); c += 2) {
      const from = Number(u[c]);
      const to = Number(u[c + 1]);
      if (n > begin && from - Number(u[2 * n - 1]) <= snap_m) {
        u[2 * n - 1] = to;
        edge[2 * n - 1] = Number(edge[c + 1]);
      } else if (to - from > snap_m) {
        u[2 * n] = from;
        u[2 * n + 1] = to;
        edge[2 * n] = Number(edge[c]);
        edge[2 * n + 1] = Number(edge[c + 1]);
        n++;
      }
    }
    start[i + 1] = n;
  }
  return { start, u: u.subarray(0, 2 * n), cause: edge.subarray(0, 2 * n) };
}

/** What lies in either of two sets of intervals; parts that touch become one. */
export function united(a: LineIntervals, b: LineIntervals, count: number): LineIntervals {
  const start = new Int32Array(count + 1);
  const u = new Float64Array(a.u.length + b.u.length);
  const cause = new Int32Array(u.length);
  let n = 0;
  for (let i = 0; i < count; i++) {
    const begin = n;
    let p = Number(a.start[i]);
    let q = Number(b.start[i]);
    const pEnd = Number(a.start[i + 1]);
    const qEnd = Number(b.start[i + 1]);
    while (p < pEnd || q < qEnd) {
      const takeA = q >= qEnd || (p < pEnd && Number(a.u[2 * p]) <= Number(b.u[2 * q]));
      const source = takeA ? a : b;
      const k = takeA ? p++ : q++;
      const from = Number(source.u[2 * k]);
      const to = Number(source.u[2 * k + 1]);
      if (n > begin && from - Number(u[2 * n - 1]) <= snap_m) {
        if (to > Number(u[2 * n - 1])) {
          u[2 * n - 1] = to;
          cause[2 * n - 1] = Number(source.cause[2 * k + 1]);
        }
      } else {
        u[2 * n] = from;
        u[2 * n + 1] = to;
        cause[2 * n] = Number(source.cause[2 * k]);
        cause[2 * n + 1] = Number(source.cause[2 * k + 1]);
        n++;
      }
    }
    start[i + 1] = n;
  }
  return { start, u: u.subarray(0, 2 * n), cause: cause.subarray(0, 2 * n) };
}
