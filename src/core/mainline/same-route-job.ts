import { holdTheSame } from "../identity.ts";
import type { RouteJob } from "./route-job.ts";

/** Do two jobs ask for the same route? Told by what they hold, so that an edit taken back finds its route again. */
export function isSameRouteJob(one: RouteJob, other: RouteJob): boolean {
  return holdTheSame(one, other);
}
