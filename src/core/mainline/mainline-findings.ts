import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import type { Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { type RouteFault, routeFaults } from "./check-route.ts";
import {
  drawnCrosses,
  drawnNear,
  drawnSlanted,
  drawnThroughRows,
  leavesParcel,
  rowsUnreached,
  sourceUnknown,
} from "./findings.ts";
import type { Route } from "./route.ts";
import type { RouteJob } from "./route-job.ts";

/**
 * What a main line has to say. Findings: mainline/rows-unreached, mainline/source-unknown, mainline/leaves-parcel,
 * mainline/drawn-crosses, mainline/drawn-slanted, mainline/drawn-near, mainline/drawn-through-rows.
 */
export function mainlineFindings(
  job: RouteJob | null,
  route: Route | null,
  rows: Rows,
  { frame }: Ground,
  { mainLine }: Pick<Project, "mainLine">,
): readonly Finding[] {
  const named = mainLine.source;
  if (job !== null && job.sources.length === 0 && named !== null) return [sourceUnknown(named)];
  if (job === null || route === null) return [];
  const idsOf = (list: readonly number[]) => list.flatMap((row) => rows.rows[row]?.id ?? []);
  const [first] = route.unreached.flatMap((row) => rows.rows[row] ?? []);
  return [
    ...(first === undefined ? [] : [rowsUnreached(frame.toLonLat(first.start), idsOf(route.unreached))]),
    ...routeFaults(route, job).map((fault) => faultFinding(fault, job, frame.toLonLat(fault.at), idsOf(fault.rows))),
  ];
}

function faultFinding(
  { kind, feature, away_m, least_m }: RouteFault,
  { barriers }: RouteJob,
  at: ReturnType<Ground["frame"]["toLonLat"]>,
  rows: readonly string[],
): Finding {
  const of = barriers.features[feature];
  const [key, name] = [of?.key ?? "", of?.name ?? null];
  switch (kind) {
    case "crosses":
      return drawnCrosses(at, key, name);
    case "slanted":
      return drawnSlanted(at, key, name);
    case "near":
      return drawnNear(at, of?.key ?? null, name, away_m, least_m);
    case "rows":
      return drawnThroughRows(at, rows);
    case "leaves":
      return leavesParcel(at);
    default:
      return kind satisfies never;
  }
}
