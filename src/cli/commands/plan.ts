import { createPlanner, emptyPlanJson, planJson } from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { compassLines, compassOf } from "../compass.ts";
import { writePlan } from "../deliver.ts";
import { findingsReport } from "../findings-report.ts";
import { planReport } from "../report.ts";
import type { Terminal } from "../terminal.ts";

/** `tautrow plan`: the whole plan of every input as tables or JSON, and its files with --out. Gives the exit code. */
export function planCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const planner = createPlanner();
  const out = args.value("out");
  const day = args.value("date");
  // Tables read the compass of today; JSON only that of a day asked for, so that the same call gives the same object.
  const date = day ?? (args.has("json") ? null : terminal.today);
  return overInputs(args, terminal, async ({ project, findings, source, folder, units }) => {
    const options = { units: args.has("units") ? units : "metric", source } as const;
    if (project === null) {
      if (out !== null) terminal.note("Nothing was written: there is no project to plan.\n");
      return { findings, report: findingsReport(findings, units), json: emptyPlanJson(findings, options) };
    }
    const plan = planner.plan(project);
    const compass = date === null ? null : await compassOf(plan, date);
    // Empty files would take the place of those of an earlier plan.
    if (out !== null && plan.rows === null) terminal.note("Nothing was written: the file has to be mended first.\n");
    else if (out !== null) await writePlan(plan, out, folder, terminal);
    return {
      findings: plan.findings,
      report: planReport(plan, units, compass === null ? [] : compassLines(compass, date ?? "", units)),
      json: planJson(plan, { ...options, compass: compass?.ok ? compass.readings : [] }),
    };
  });
}
