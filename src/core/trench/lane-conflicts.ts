import { outward } from "../mainline/outward.ts";
import type { Route } from "../mainline/route.ts";
import { reach_m } from "../mainline/route-job.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { LaneConflict } from "./trench.ts";

/** What a stake is off by when it is driven; no conflict. */
const slack_m = 0.005;

/** Something of a row that stands in the ground. */
export interface Standing {
  readonly row: number;
  readonly end: "start" | "end";
  readonly what: "post" | "anchor";
  readonly x: number;
  readonly y: number;
}

/** End posts, anchors and line posts of a row; a line post belongs to the end it is nearer to. */
export function standingOf(rows: Rows, row: number, blocks: readonly Block[]): readonly Standing[] {
  const own = rows.rows[row];
  const block = blocks.find(({ id }) => id === own?.block);
  if (own === undefined || block === undefined) return [];
  const anchor_m = reach_m(block);
  const ends = (["start", "end"] as const).flatMap((end): readonly Standing[] => {
    const [post, out] = outward(own, end);
    return [
      { row, end, what: "post", x: post[0], y: post[1] },
      ...(anchor_m > 0
        ? [{ row, end, what: "anchor", x: post[0] + anchor_m * out[0], y: post[1] + anchor_m * out[1] } as const]
        : []),
    ];
  });
  const { offsets, station_m, xy } = rows.linePosts;
  const posts: Standing[] = [];
  for (let i = Number(offsets[row]); i < Number(offsets[row + 1]); i++) {
    const end = Number(station_m[i]) < own.length_m / 2 ? "start" : "end";
    posts.push({ row, end, what: "post", x: Number(xy[2 * i]), y: Number(xy[2 * i + 1]) });
  }
  return [...ends, ...posts];
}

/** The nearest place of the trench to every row's posts and anchors at each end, where it is nearer than `least_m`. */
export function laneConflicts(
  route: Pick<Route, "xy" | "upstream">,
  rows: Rows,
  blocks: readonly Block[],
  least_m: number,
): readonly LaneConflict[] {
  const legs = legsOf(route);
  return rows.rows.flatMap((_, row) => {
    const standing = standingOf(rows, row, blocks);
    const near = legsNear(legs, standing, least_m);
    const worst = new Map<string, LaneConflict>();
    for (const { end, what, x, y } of standing) {
      for (const [px, py, qx, qy] of near) {
        const { distance_m, along } = nearestOnSegment(x, y, px, py, qx, qy);
        const key = `${end} ${what}`;
        if (distance_m >= Math.min(least_m - slack_m, worst.get(key)?.distance_m ?? Infinity)) continue;
        const xy = [px + along * (qx - px), py + along * (qy - py)] as const;
        worst.set(key, { row, end, what, distance_m, least_m, xy });
      }
    }
    return [...worst.values()];
  });
}

type Leg = readonly [px: number, py: number, qx: number, qy: number];

function legsOf({ xy, upstream }: Pick<Route, "xy" | "upstream">): readonly Leg[] {
  return [...upstream].flatMap((from, i): readonly Leg[] =>
    from < 0 ? [] : [[Number(xy[2 * from]), Number(xy[2 * from + 1]), Number(xy[2 * i]), Number(xy[2 * i + 1])]],
  );
}

/** The legs whose boxes come within a distance of the box around what stands: most rows are far from most legs. */
function legsNear(legs: readonly Leg[], standing: readonly Standing[], reach_m: number): readonly Leg[] {
  let [left, low, right, high] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of standing) {
    left = Math.min(left, x - reach_m);
    right = Math.max(right, x + reach_m);
    low = Math.min(low, y - reach_m);
    high = Math.max(high, y + reach_m);
  }
  return legs.filter(
    ([px, py, qx, qy]) =>
      Math.max(px, qx) >= left && Math.min(px, qx) <= right && Math.max(py, qy) >= low && Math.min(py, qy) <= high,
  );
}
