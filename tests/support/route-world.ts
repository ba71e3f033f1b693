import type { RouteJob } from "../../src/core/mainline/route-job.ts";
import { type Point, toPoints } from "./parcels.ts";

/** A straight piece. */
export type Piece = readonly [from: Point, to: Point];

/** What a trench must keep from, in plain lists: written apart from the product's own code, for comparison only. */
export interface RouteWorld {
  /** The places where the trench meets row r: 2r at its start, 2r + 1 at its end. */
  readonly tees: readonly Point[];
  /** Rows from one meeting place to the other: the trench may touch their ends, never cross between. */
  readonly walls: readonly Piece[];
  readonly keeps: readonly Keep[];
  /** Rings of areas that nothing runs inside. */
  readonly areas: readonly (readonly Point[])[];
}

export interface Keep {
  readonly piece: Piece;
  readonly distance_m: number;
  /** Index of the feature; -1 for an outline, -2 for a row. */
  readonly feature: number;
}

/** How far a wall's ends are pulled in, so that a trench may pass where it meets the row. */
const hair_m = 1e-3;
/** Lengths are told apart down to here. */
const close_m = 1e-6;
/** A thing without a distance still has a place. */
const leastKeep_m = 1e-4;

export interface WorldWish {
  /** Keep the stated distance from rows too, from anchor to anchor, as far as alleys and the lane allow it. */
  readonly keepsRows?: boolean;
}

/** The world of a job; features that may be crossed are left out. */
export function routeWorld(job: RouteJob, { keepsRows = false }: WorldWish = {}): RouteWorld {
  const { rows, barriers } = job;
  const tees: Point[] = [];
  const walls: Piece[] = [];
  const keeps: Keep[] = [];
  for (let row = 0; row < rows.block.length; row++) {
    const lane_m = rows.lane_m[row] ?? 0;
    tees.push(pastPost(job, row, 0, lane_m), pastPost(job, row, 1, lane_m));
    walls.push([pastPost(job, row, 0, lane_m - hair_m), pastPost(job, row, 1, lane_m - hair_m)]);
    if (keepsRows) {
      const distance_m = besideRow_m(job, row);
      const past_m = Math.min(rows.reach_m[row] ?? 0, lane_m - distance_m);
      keeps.push({ piece: [pastPost(job, row, 0, past_m), pastPost(job, row, 1, past_m)], distance_m, feature: -2 });
    }
  }
  for (let b = 0; b < barriers.distance_m.length; b++) {
    const feature = barriers.feature[b] ?? -1;
    if (barriers.features[feature]?.isCrossable === true) continue;
    const piece: Piece = [pointOf(barriers.xy, 2 * b), pointOf(barriers.xy, 2 * b + 1)];
    keeps.push({ piece, distance_m: Math.max(leastKeep_m, barriers.distance_m[b] ?? 0), feature });
  }
  const areas = barriers.features
    .filter(({ isCrossable }) => !isCrossable)
    .flatMap((feature) => feature.areas.flatMap((rings) => toPoints(rings)));
  return { tees, walls, keeps, areas };
}

/** So far past the end post, along the row. */
export function pastPost({ rows }: RouteJob, row: number, end: 0 | 1, past_m: number): Point {
  const [x, y] = pointOf(rows.posts, 2 * row + end);
  const [ox, oy] = pointOf(rows.posts, 2 * row + 1 - end);
  const length_m = Math.hypot(x - ox, y - oy);
  return [x + ((x - ox) / length_m) * past_m, y + ((y - oy) / length_m) * past_m];
}

/** The distance to keep from a row: the least that is stated, but no more than half an alley. */
export function besideRow_m({ rows, postDistance_m }: RouteJob, row: number): number {
  return Math.min(postDistance_m, (rows.spacing_m[row] ?? 0) / 2 - close_m);
}

/** May a straight trench run here? A distance that one of its ends lacks already is kept as well as that end keeps it. */
export function isClear(world: RouteWorld, piece: Piece): boolean {
  return (
    world.walls.every((wall) => !isCrossing(piece, wall)) && world.keeps.every((keep) => keepsDistance(piece, keep))
  );
}

/** The same without the exception for ends: a place where a corner of a shortest way may be. */
export function isFree(world: RouteWorld, at: Point): boolean {
  return (
    world.keeps.every(({ piece, distance_m }) => apart_m([at, at], piece) >= distance_m - close_m) &&
    !world.areas.some((ring) => isInside(ring, at))
  );
}

function keepsDistance(piece: Piece, { piece: from, distance_m }: Keep): boolean {
  const apart = apart_m(piece, from);
  if (apart >= distance_m - close_m) return true;
  const ends_m = Math.min(apart_m([piece[0], piece[0]], from), apart_m([piece[1], piece[1]], from));
  return apart > 0 && apart >= Math.min(ends_m, distance_m) - close_m;
}

/** Least distance of two straight pieces; 0 where they cross. */
export function apart_m(one: Piece, other: Piece): number {
  if (isCrossing(one, other)) return 0;
  return Math.min(
    fromPiece_m(one[0], other),
    fromPiece_m(one[1], other),
    fromPiece_m(other[0], one),
    fromPiece_m(other[1], one),
  );
}

/** Do the insides of two pieces cross in one point? */
export function isCrossing([a, b]: Piece, [c, d]: Piece): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Above 0 where the third point is to the left of the way from the first to the second. */
function side([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** Is a place within the outlines of the parcels, by counting the edges to the east of it? */
export function isWithin({ keeps }: Pick<RouteWorld, "keeps">, [x, y]: Point): boolean {
  return (
    keeps.filter(({ feature, piece: [[x1, y1], [x2, y2]] }) => {
      return feature === -1 && y1 > y !== y2 > y && x < x1 + ((y - y1) * (x2 - x1)) / (y2 - y1);
    }).length %
      2 ===
    1
  );
}

export function fromPiece_m([x, y]: Point, [[x1, y1], [x2, y2]]: Piece): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / length2));
  return Math.hypot(x - x1 - along * dx, y - y1 - along * dy);
}

export function isInside(ring: readonly Point[], [x, y]: Point): boolean {
  return (
    ring.filter(([px, py], i) => {
      const [qx, qy] = ring[(i + 1) % ring.length] ?? [px, py];
      return py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py);
    }).length %
      2 ===
    1
  );
}

function pointOf(xy: Float64Array, i: number): Point {
  return [xy[2 * i] ?? Number.NaN, xy[2 * i + 1] ?? Number.NaN];
}
