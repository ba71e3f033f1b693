import Flatbush from "flatbush";
import { isInside } from "../ground/inside.ts";
import { areClearlyApart, segmentsApart_m } from "../plane/apart.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { RowEnd } from "./heads.ts";
import type { RouteJob } from "./route-job.ts";

/** What a way from a place need not mind: barriers and rows, by index, that it begins too near to, and barriers that it begins behind. */
export interface Exempt {
  /** How far away the place is: so near the way may come, but not cross. */
  readonly near_m: ReadonlyMap<number, number>;
  readonly rows_m: ReadonlyMap<number, number>;
  readonly crossed: ReadonlySet<number>;
}

/** What the middle of a trench may do. */
export interface Clearance {
  /** May it run straight from one place to another? */
  isClear(px: number, py: number, qx: number, qy: number, exempt?: Exempt): boolean;
  /** The same, keeping the whole least distance to posts, anchors and rows as well. */
  isRoomy(px: number, py: number, qx: number, qy: number, exempt?: Exempt): boolean;
  /** Is a place within the parcels, outside of areas, and as far from everything as it must be? */
  isFree(x: number, y: number): boolean;
  /** What is left of a row as a wall at its end: the place, and how far the trench should stay from it. */
  wallEnd(row: number, side: 0 | 1): { readonly x: number; readonly y: number; readonly beside_m: number };
  /** Nothing is too near to the place, and no area holds it. */
  isUntouched(x: number, y: number): boolean;
  /** What a way from the place need not mind. */
  exemptAt(x: number, y: number): Exempt;
}

/** Rounding: as much nearer than its distance a barrier may be. */
const slack_m = 1e-6;
/** Of the least distance to posts: nearer than this the trench never comes; between the two it is a conflict that is told. */
const hardShare = 0.5;

/** Rows as walls, each with how near the trench may come at all, and without a conflict. */
interface Walls {
  readonly xy: Float64Array;
  readonly hard_m: Float64Array;
  readonly roomy_m: Float64Array;
}

/** The world of a route job. `ends` are the row ends as the route sees them, two a row. */
export function createClearance(job: RouteJob, ends: readonly RowEnd[]): Clearance {
  const { barriers } = job;
  const walls = wallsOf(job, ends);
  const barrierTree = treeOf(barriers.xy, barriers.distance_m);
  const wallTree = treeOf(walls.xy, walls.roomy_m);
  const outline = outlineTree(job);

  const isPastBarriers = (px: number, py: number, qx: number, qy: number, exempt: Exempt | undefined): boolean => {
    let isPast = true;
    barrierTree.search(Math.min(px, qx), Math.min(py, qy), Math.max(px, qx), Math.max(py, qy), (i) => {
      if (!isPast || exempt?.crossed.has(i) === true) return false;
      const keep_m = exempt?.near_m.get(i) ?? at(barriers.distance_m, i);
      if (isTooNear(barriers.xy, i, px, py, qx, qy, keep_m)) isPast = false;
      return false;
    });
    return isPast;
  };
  const isPastWalls = (
    px: number,
    py: number,
    qx: number,
    qy: number,
    keep_m: Float64Array,
    exempt: Exempt | undefined,
  ): boolean => {
    let isPast = true;
    wallTree.search(Math.min(px, qx), Math.min(py, qy), Math.max(px, qx), Math.max(py, qy), (i) => {
      if (!isPast) return false;
      const least_m = Math.min(at(keep_m, i), exempt?.rows_m.get(i) ?? Infinity);
      if (isTooNear(walls.xy, i, px, py, qx, qy, least_m)) isPast = false;
      return false;
    });
    return isPast;
  };
  const isInParcels = (x: number, y: number): boolean => {
    let isInside = false;
    outline.search(x, y, Infinity, y, (i) => {
      const [px, py, qx, qy] = piece(barriers.xy, i);
      if (at(barriers.feature, i) === -1 && py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py))
        isInside = !isInside;
      return false;
    });
    return isInside;
  };
  const areasAround = (x: number, y: number): ReadonlySet<number> => {
    const around = new Set<number>();
    barriers.features.forEach(({ areas }, f) => {
      if (areas.some((rings) => isInside(rings, x, y))) around.add(f);
    });
    return around;
  };
  const tooNear = (x: number, y: number): ReadonlyMap<number, number> =>
    nearer(barrierTree, barriers.xy, barriers.distance_m, x, y);
  return {
    isClear: (px, py, qx, qy, exempt) =>
      isPastBarriers(px, py, qx, qy, exempt) && isPastWalls(px, py, qx, qy, walls.hard_m, exempt),
    isRoomy: (px, py, qx, qy, exempt) =>
      isPastBarriers(px, py, qx, qy, exempt) && isPastWalls(px, py, qx, qy, walls.roomy_m, exempt),
    isFree: (x, y) => isInParcels(x, y) && isPastBarriers(x, y, x, y, undefined) && areasAround(x, y).size === 0,
    wallEnd: (row, side) => ({
      x: at(walls.xy, 4 * row + 2 * side),
      y: at(walls.xy, 4 * row + 2 * side + 1),
      beside_m: at(walls.roomy_m, row),
    }),
    isUntouched: (x, y) => tooNear(x, y).size === 0 && areasAround(x, y).size === 0,
    exemptAt: (x, y) => {
      const around = areasAround(x, y);
      const isOutside = !isInParcels(x, y);
      const crossed = new Set<number>();
      barriers.feature.forEach((feature, i) => {
        if (feature === -1 ? isOutside : around.has(feature)) crossed.add(i);
      });
      return { near_m: tooNear(x, y), rows_m: nearer(wallTree, walls.xy, walls.roomy_m, x, y), crossed };
    },
  };
}

/** From where the trench may cross its line at one end to the other, less what the trench needs beside it; at most from anchor to anchor. */
function wallsOf({ rows, postDistance_m }: RouteJob, ends: readonly RowEnd[]): Walls {
  const count = rows.line.length;
  const xy = new Float64Array(4 * count);
  const hard_m = new Float64Array(count);
  const roomy_m = new Float64Array(count);
  for (let row = 0; row < count; row++) {
    const beside_m = Math.min(postDistance_m, at(rows.spacing_m, row) / 2 - slack_m);
    roomy_m[row] = Math.max(slack_m, beside_m);
    hard_m[row] = Math.max(slack_m, hardShare * beside_m);
    for (const side of [0, 1]) {
      const end = ends[2 * row + side];
      if (end === undefined) continue;
      const [anchor_m, keep_m] = [at(rows.reach_m, row), at(hard_m, row)];
      const past_m = end.past_m >= anchor_m + keep_m - slack_m ? anchor_m : end.past_m - 2 * keep_m;
      xy[4 * row + 2 * side] = end.post[0] + past_m * end.outward[0];
      xy[4 * row + 2 * side + 1] = end.post[1] + past_m * end.outward[1];
    }
  }
  return { xy, hard_m, roomy_m };
}

/** Does a way come nearer to a segment than it may, or cross it? */
function isTooNear(
  xy: Float64Array,
  i: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
  keep_m: number,
): boolean {
  const [rx, ry, sx, sy] = [at(xy, 4 * i), at(xy, 4 * i + 1), at(xy, 4 * i + 2), at(xy, 4 * i + 3)];
  if (areClearlyApart(px, py, qx, qy, rx, ry, sx, sy, keep_m)) return false;
  const away_m = segmentsApart_m(px, py, qx, qy, rx, ry, sx, sy);
  return away_m < keep_m - slack_m || away_m === 0;
}

/** Segments that a place is nearer to than their distance, and how near it is. */
function nearer(
  tree: Flatbush,
  xy: Float64Array,
  distance_m: Float64Array,
  x: number,
  y: number,
): ReadonlyMap<number, number> {
  const near = new Map<number, number>();
  for (const i of tree.search(x, y, x, y)) {
    const [px, py, qx, qy] = piece(xy, i);
    const away_m = nearestOnSegment(x, y, px, py, qx, qy).distance_m;
    if (away_m < at(distance_m, i) - slack_m) near.set(i, away_m);
  }
  return near;
}

/** Boxes of segments, each as much larger as its distance. */
function treeOf(xy: Float64Array, distance_m: Float64Array): Flatbush {
  const tree = new Flatbush(Math.max(1, distance_m.length));
  distance_m.forEach((keep_m, i) => {
    const [px, py, qx, qy] = piece(xy, i);
    tree.add(
      Math.min(px, qx) - keep_m,
      Math.min(py, qy) - keep_m,
      Math.max(px, qx) + keep_m,
      Math.max(py, qy) + keep_m,
    );
  });
  if (distance_m.length === 0) tree.add(Infinity, Infinity, Infinity, Infinity);
  tree.finish();
  return tree;
}

/** Boxes of all barriers as they lie, to cast a ray over the outlines among them. */
function outlineTree({ barriers }: RouteJob): Flatbush {
  return treeOf(barriers.xy, new Float64Array(barriers.distance_m.length));
}

function piece(xy: Float64Array, i: number): readonly [px: number, py: number, qx: number, qy: number] {
  return [at(xy, 4 * i), at(xy, 4 * i + 1), at(xy, 4 * i + 2), at(xy, 4 * i + 3)];
}

function at(list: Float64Array | Int32Array, i: number): number {
  return list[i] ?? 0;
}
