import type { Ground } from "../ground/ground.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { mainlineFindings } from "./mainline-findings.ts";
import type { RouteOf } from "./route.ts";
import { routeJob } from "./route-job.ts";
import { type Mainline, unroutedMainline } from "./water-end.ts";

/** What the stage needs of a project. */
export type MainlineInput = Pick<Project, "blocks" | "sources" | "mainLines" | "keepOuts" | "mainLine">;

/** The route from a source to one end of every row. Findings: see `mainlineFindings`. */
export function mainline(rows: Rows, ground: Ground, project: MainlineInput, routeOf: RouteOf): Outcome<Mainline> {
  const unrouted = unroutedMainline(rows, ground, project);
  const job = routeJob(rows, ground, project);
  const route = job === null ? null : routeOf(job);
  const laid: Mainline = { waterEnd: route?.waterEnd ?? unrouted.waterEnd, job, route };
  return success(laid, mainlineFindings(job, route, rows, ground, project));
}
