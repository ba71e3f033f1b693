import type { Route } from "../mainline/route.ts";
import type { Barriers } from "../mainline/route-job.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { type Standing, standingOf } from "./lane-conflicts.ts";
import type { Bend, Branch, LaneConflict } from "./trench.ts";

/** A trencher is steered round less than this while it digs. Common practice, no source. */
const steered_deg = 22.5;

/**
 * Where a trencher has to turn or to drive on and off, with less room than it takes up to the nearest post, anchor, boundary or obstacle: at
 * bends and at the ends of the line. Only for a trench that is dug once posts stand.
 */
export function turningConflicts(
  route: Pick<Route, "xy">,
  branches: readonly Branch[],
  bends: readonly Bend[],
  rows: Rows,
  blocks: readonly Block[],
  barriers: Pick<Barriers, "xy">,
  room_m: number,
): readonly LaneConflict[] {
  const places = new Set([
    ...bends.filter(({ angle_deg }) => angle_deg >= steered_deg).map(({ point }) => point),
    ...branches.flatMap(({ points }, i) => (i === 0 ? [points[0] ?? 0, points.at(-1) ?? 0] : [points.at(-1) ?? 0])),
  ]);
  const standing = rows.rows.flatMap((_, row) => standingOf(rows, row, blocks));
  return [...places].flatMap((point): readonly LaneConflict[] => {
    const [x, y] = [Number(route.xy[2 * point]), Number(route.xy[2 * point + 1])];
    const post = nearestStanding(x, y, standing, room_m);
    const wall_m = nearestPiece_m(x, y, barriers.xy);
    const distance_m = Math.min(post?.distance_m ?? Infinity, wall_m);
    if (distance_m >= room_m) return [];
    const isPost = post !== null && post.distance_m <= wall_m;
    const [row, end] = isPost ? [post.of.row, post.of.end] : [-1, "start" as const];
    return [{ row, end, what: "turning", distance_m, least_m: room_m, xy: [x, y] }];
  });
}

function nearestStanding(x: number, y: number, standing: readonly Standing[], within_m: number) {
  let best: { readonly of: Standing; readonly distance_m: number } | null = null;
  for (const of of standing) {
    const [dx, dy] = [of.x - x, of.y - y];
    if (Math.abs(dx) > within_m || Math.abs(dy) > within_m) continue;
    const distance_m = Math.hypot(dx, dy);
    if (best === null || distance_m < best.distance_m) best = { of, distance_m };
  }
  return best;
}

function nearestPiece_m(x: number, y: number, xy: Float64Array): number {
  let least_m = Infinity;
  for (let i = 0; i + 3 < xy.length; i += 4) {
    const piece = [Number(xy[i]), Number(xy[i + 1]), Number(xy[i + 2]), Number(xy[i + 3])] as const;
    least_m = Math.min(least_m, nearestOnSegment(x, y, ...piece).distance_m);
  }
  return least_m;
}
