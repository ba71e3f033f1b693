import {
  createPlanner,
  findingJson,
  formatQuantity,
  type Sweep,
  sweepJson,
  type UnitSystem,
} from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { findingsReport } from "../findings-report.ts";
import { columnLength } from "../row-table.ts";
import { table } from "../table.ts";
import { type Terminal, UsageError } from "../terminal.ts";

const finestStep_deg = 0.1;
const coarsestStep_deg = 90;

/** `tautrow sweep`: what every bearing would hold, block by block. Gives the exit code. */
export function sweepCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const planner = createPlanner();
  const step_deg = stepOf(args.value("step"));
  const only = args.value("block");
  return overInputs(args, terminal, ({ project, findings, source, units }) => {
    const all = project === null ? findings : planner.plan(project).findings;
    const ids = project?.blocks.map((block) => block.id) ?? [];
    if (project !== null && only !== null && !ids.includes(only)) {
      throw new UsageError(`There is no block "${only}"; there is ${ids.join(", ")}.`);
    }
    const swept = ids.filter((id) => only === null || id === only);
    const sweeps = project === null ? [] : swept.map((id) => planner.sweep(project, id, step_deg));
    const serious = all.filter((finding) => finding.severity !== "note");
    const spoken = args.has("units") ? units : "metric";
    return {
      findings: all,
      report: `${sweeps.map((sweep) => sweepReport(sweep, units)).join("\n")}${findingsReport(serious, units)}`,
      json: { ...sweepJson(sweeps, step_deg), source, findings: all.map((finding) => findingJson(finding, spoken)) },
    };
  });
}

function stepOf(given: string | null): number {
  const step_deg = given === null ? 1 : Number(given);
  if (step_deg >= finestStep_deg && step_deg <= coarsestStep_deg) return step_deg;
  throw new UsageError(`--step is a number of degrees from ${finestStep_deg} to ${coarsestStep_deg}, not "${given}".`);
}

function sweepReport(sweep: Sweep, units: UnitSystem): string {
  const length = (value_m: number) => columnLength(value_m, units);
  const { best, points } = sweep;
  const said =
    best === null ? "no bearing holds a row" : `best bearing ${formatQuantity("angle", best.bearing_deg, units)}`;
  const column = (head: string, cell: (point: Sweep["points"][number]) => string) => ({
    head,
    cells: points.map(cell),
    isNumber: true as const,
  });
  return `Block ${sweep.block}: ${said}\n${table([
    column("bearing", (point) => formatQuantity("angle", point.bearing_deg, units)),
    column("rows", (point) => String(point.rows)),
    column("row length", (point) => length(point.rowLength_m)),
    column("mean row", (point) => length(point.meanLength_m)),
    column("too short", (point) => String(point.shortRows)),
    column("planted", (point) => formatQuantity("ratio", point.plantedShare, units, 1)),
    column("score", (point) => length(point.score_m)),
    {
      head: "",
      cells: points.map((point) =>
        point.locked ? "locked out" : point.bearing_deg === best?.bearing_deg ? "best" : "",
      ),
    },
  ])}`;
}
