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
  /** Index of the feature; -1 for an outline, -2 for posts and anchors. */
  readonly feature: number;
}

/** How far a wall's ends are pulled in, so that a trench may pass where it meets the row. */
const hair_m = 1e-3;
/** Lengths are told apart down to here. */
const close_m = 1e-6;
/** A thing without a distance still has a place. */
const leastKeep_m = 1e-4;

export interface WorldWish {
  /** Keep the stated distance from end posts and anchors of every row too. */
  readonly keepsPosts?: boolean;
}

/** The world of a job; features that may be crossed are left out. */
export function routeWorld(job: RouteJob, { keepsPosts = false }: WorldWish = {}): RouteWorld {
  const { rows, barriers } = job;
  const tees: Point[] = [];
  const walls: Piece[] = [];
  const keeps: Keep[] = [];
  for (let r = 0; r < rows.block.length; r++) {
    const [start, end] = [pointOf(rows.posts, 2 * r), pointOf(rows.posts, 2 * r + 1)];
    const tee = (post: Point, other: Point, out_m: number): Point => {
      const length_m = Math.hypot(post[0] - other[0], post[1] - other[1]);
      return [post[0] + ((post[0] - other[0]) / length_m) * out_m, post[1] + ((post[1] - other[1]) / length_m) * out_m];
    };
    const [lane_m, reach_m] = [rows.lane_m[r] ?? 0, rows.reach_m[r] ?? 0];
    const [one, two] = [tee(start, end, lane_m), tee(end, start, lane_m)];
    tees.push(one, two);
    walls.push([tee(start, end, lane_m - hair_m), tee(end, start, lane_m - hair_m)]);
    if (keepsPosts) {
      const anchors = reach_m > 0 ? [tee(start, end, reach_m), tee(end, start, reach_m)] : [];
      for (const at of [start, end, ...anchors]) {
        keeps.push({ piece: [at, at], distance_m: job.postDistance_m, feature: -2 });
      }
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
export function isWithin({ keeps }: RouteWorld, [x, y]: Point): boolean {
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
