import type { PlanePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { PlacedPoint } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";

/** Which end of each row meets the water, in the order of the plan's rows. */
export interface Mainline {
  readonly waterEnd: readonly ("start" | "end")[];
}

/**
 * The water end of every row: the end nearer to the nearest water source, straight across the ground; the start when no source is
 * known or both ends are as near. Starts and ends themselves never move with the water. Gives no findings.
 */
export function mainline(rows: Rows, frame: Frame, sources: readonly PlacedPoint[]): Mainline {
  const places = sources.map((source) => frame.toPlane(source.at));
  return {
    waterEnd: rows.rows.map((row) => (nearest_m(row.end, places) < nearest_m(row.start, places) ? "end" : "start")),
  };
}

/** Distance to the nearest of some places; infinite when there are none. */
function nearest_m(from: PlanePoint, places: readonly PlanePoint[]): number {
  return places.reduce((least_m, to) => Math.min(least_m, Math.hypot(to[0] - from[0], to[1] - from[1])), Infinity);
}
