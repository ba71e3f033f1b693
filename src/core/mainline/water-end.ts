import type { Ground } from "../ground/ground.ts";
import type { PlanePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { PlacedPoint, Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Route } from "./route.ts";
import type { RouteJob } from "./route-job.ts";

export type WaterEnd = "start" | "end";

/** Where the main line runs, and which end of each row meets the water, in the order of the plan's rows. */
export interface Mainline {
  readonly waterEnd: readonly WaterEnd[];
  /** What the route is worked out from; null without a source or rows. */
  readonly job: RouteJob | null;
  /** null without a job, and while it is not worked out. */
  readonly route: Route | null;
}

/** The main line without a route: rows meet the water at their nearer end. */
export function unroutedMainline(rows: Rows, ground: Ground, { sources }: Pick<Project, "sources">): Mainline {
  return { waterEnd: nearerEnds(rows, ground.frame, sources), job: null, route: null };
}

/**
 * The water end of every row while no route is known: the end nearer to the nearest water source, straight across the ground; the start
 * when no source is known or both ends are as near. Starts and ends themselves never move with the water.
 */
export function nearerEnds(rows: Rows, frame: Frame, sources: readonly PlacedPoint[]): readonly WaterEnd[] {
  const places = sources.map((source) => frame.toPlane(source.at));
  return rows.rows.map((row) => (nearest_m(row.end, places) < nearest_m(row.start, places) ? "end" : "start"));
}

/** Distance to the nearest of some places; infinite when there are none. */
function nearest_m(from: PlanePoint, places: readonly PlanePoint[]): number {
  return places.reduce((least_m, to) => Math.min(least_m, Math.hypot(to[0] - from[0], to[1] - from[1])), Infinity);
}
