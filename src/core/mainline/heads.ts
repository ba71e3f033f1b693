import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { RouteRows } from "./route-job.ts";

/** One end of a row as the route sees it. */
export interface RowEnd {
  readonly row: number;
  readonly end: "start" | "end";
  /** The end post. */
  readonly post: PlanePoint;
  /** Unit vector along the row, away from it. */
  readonly outward: PlanePoint;
  /** How far past the end post the trench crosses the row's line. */
  readonly past_m: number;
}

/** Both ends of every row: row i has entries 2 i (start) and 2 i + 1 (end). */
export function rowEnds(rows: RouteRows): readonly RowEnd[] {
  return Array.from(rows.line).flatMap((_, row): RowEnd[] => {
    const [sx = 0, sy = 0, ex = 0, ey = 0] = rows.posts.subarray(4 * row, 4 * row + 4);
    const length_m = Math.hypot(ex - sx, ey - sy);
    const [ux, uy] = length_m === 0 ? [0, 0] : [(ex - sx) / length_m, (ey - sy) / length_m];
    const past_m = Number(rows.lane_m[row]);
    return [
      { row, end: "start", post: planePoint(sx, sy), outward: planePoint(-ux, -uy), past_m },
      { row, end: "end", post: planePoint(ex, ey), outward: planePoint(ux, uy), past_m },
    ];
  });
}

/** Where the trench crosses the row's line. */
export function headOf({ post, outward, past_m }: RowEnd): PlanePoint {
  return planePoint(post[0] + past_m * outward[0], post[1] + past_m * outward[1]);
}
