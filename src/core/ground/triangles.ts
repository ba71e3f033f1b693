import Delaunator from "delaunator";

/** Three corners a triangle, and for every side the same side of its neighbour, or -1. */
export interface Triangles {
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
}

/** A triangle at the outside that is thinner than this is rounding: its corners are in line. */
const leastHeight_m = 1e-3;

/** The Delaunay triangles between places, x and y in turn, plane metres; none where all places lie in one line. */
export function trianglesOf(xy: Float64Array): Triangles {
  const none = { triangles: new Uint32Array(0), halfedges: new Int32Array(0) };
  if (xy.length < 6 || width_m(xy) < leastWidth_m) return none;
  return withoutSlivers(xy, new Delaunator(xy));
}

/** Places in a strip narrower than this are in one line: a line of latitude is a little bent in the plane. */
const leastWidth_m = 0.1;

/** How far the places reach to the sides of the line between two that lie far apart, both sides together, m. */
function width_m(xy: Float64Array): number {
  const farthestFrom = (from: number) => {
    let [found, most_m] = [from, 0];
    for (let i = 0; i < xy.length; i += 2) {
      const away_m = Math.hypot(Number(xy[i]) - Number(xy[from]), Number(xy[i + 1]) - Number(xy[from + 1]));
      if (away_m > most_m) [found, most_m] = [i, away_m];
    }
    return found;
  };
  const first = farthestFrom(0);
  const last = farthestFrom(first);
  const [px, py] = [Number(xy[first]), Number(xy[first + 1])];
  const [dx, dy] = [Number(xy[last]) - px, Number(xy[last + 1]) - py];
  let [left_m, right_m] = [0, 0];
  for (let i = 0; i < xy.length; i += 2) {
    const side_m = (dx * (Number(xy[i + 1]) - py) - dy * (Number(xy[i]) - px)) / Math.hypot(dx, dy);
    left_m = Math.max(left_m, side_m);
    right_m = Math.min(right_m, side_m);
  }
  return left_m - right_m;
}

/** Takes thin triangles off the outside, and those that are then outside, so that a walk never ends in one. */
function withoutSlivers(xy: Float64Array, { triangles, halfedges }: Triangles): Triangles {
  const neighbours = Int32Array.from(halfedges);
  const isGone = new Uint8Array(triangles.length / 3);
  const outside: number[] = [];
  for (const [side, other] of neighbours.entries()) if (other === -1) outside.push(Math.floor(side / 3));
  for (let triangle = outside.pop(); triangle !== undefined; triangle = outside.pop()) {
    if (isGone[triangle] === 1 || height_m(xy, triangles, triangle) >= leastHeight_m) continue;
    isGone[triangle] = 1;
    for (let side = 3 * triangle; side < 3 * triangle + 3; side++) {
      const other = Number(neighbours[side]);
      if (other === -1) continue;
      neighbours[other] = -1;
      outside.push(Math.floor(other / 3));
    }
  }
  if (!isGone.includes(1)) return { triangles, halfedges };
  const kept = [...isGone.keys()].filter((triangle) => isGone[triangle] === 0);
  const place = new Int32Array(isGone.length);
  for (const [to, from] of kept.entries()) place[from] = to;
  const sides = kept.flatMap((triangle) => [3 * triangle, 3 * triangle + 1, 3 * triangle + 2]);
  return {
    triangles: Uint32Array.from(sides, (side) => Number(triangles[side])),
    halfedges: Int32Array.from(sides, (side) => {
      const other = Number(neighbours[side]);
      return other === -1 ? -1 : 3 * Number(place[Math.floor(other / 3)]) + (other % 3);
    }),
  };
}

/** Height of a triangle over its longest side, m. */
function height_m(xy: Float64Array, triangles: Uint32Array, triangle: number): number {
  const corners = [0, 1, 2].map((k) => {
    const n = 2 * Number(triangles[3 * triangle + k]);
    return [Number(xy[n]), Number(xy[n + 1])] as const;
  });
  let [twiceArea_m2, longest_m] = [0, 0];
  corners.forEach(([x, y], k) => {
    const [nextX, nextY] = corners[(k + 1) % 3] ?? [x, y];
    const [firstX, firstY] = corners[0] ?? [x, y];
    twiceArea_m2 += (x - firstX) * (nextY - firstY) - (nextX - firstX) * (y - firstY);
    longest_m = Math.max(longest_m, Math.hypot(nextX - x, nextY - y));
  });
  return Math.abs(twiceArea_m2) / longest_m;
}
