import type { Route } from "./route.ts";
import type { RouteJob } from "./route-job.ts";

export function layRoute(_job: RouteJob): Route | null {
  return null;
}
