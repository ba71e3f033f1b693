import type { PlanePoint } from "../core/plane/coordinate.ts";
import type { Rows } from "../core/rows/rows.ts";

/**
 * Index of the row that lies nearest to a place, within a reach in metres; null when none does.
 * Found from the plan, not from what the map has drawn, so that it is right in every frame.
 */
export function rowAt(rows: Rows, at: PlanePoint, reach_m: number): number | null {
  let nearest: number | null = null;
  let least = reach_m;
  rows.rows.forEach((row, i) => {
    const distance = distanceToSegment(at, row.start, row.end);
    if (distance > least) return;
    least = distance;
    nearest = i;
  });
  return nearest;
}

function distanceToSegment(at: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const [px, py] = [at[0] - from[0], at[1] - from[1]];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
  return Math.hypot(px - share * dx, py - share * dy);
}
