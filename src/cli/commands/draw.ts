import { createPlanner, rowSideSvg } from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { findingsReport } from "../findings-report.ts";
import { printable } from "../printable.ts";
import { type Terminal, UsageError } from "../terminal.ts";

/** `tautrow draw`: the side of one row of a plan as SVG on standard output. Gives the exit code. */
export function drawCommand(args: Arguments, terminal: Terminal): Promise<number> {
  if (args.files.length > 1) throw new UsageError("draw takes one file: a drawing is one stream.");
  const planner = createPlanner();
  return overInputs(args, terminal, ({ project, findings, units }) => {
    const plan = project === null ? null : planner.plan(project);
    if (plan === null || plan.rows === null) {
      terminal.note(printable(findingsReport(plan?.findings ?? findings, units)));
      return { findings: plan?.findings ?? findings, report: "", json: null };
    }
    const ids = plan.rows.rows.map(({ id }) => id);
    const id = args.value("row") ?? ids[0] ?? "";
    const svg = rowSideSvg(plan, id, { units });
    if (svg === null) throw new UsageError(`There is no row "${id}"; there is ${ids.join(", ")}.`);
    terminal.out(`${svg}\n`);
    return { findings: plan.findings, report: "", json: null };
  });
}
