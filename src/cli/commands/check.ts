import { createPlanner, findingJson } from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { overInputs } from "../batch.ts";
import { findingsReport } from "../findings-report.ts";
import type { Terminal } from "../terminal.ts";

/** `tautrow check`: only what there is to say about every input, from reading it to the end of the plan. Gives the exit code. */
export function checkCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const planner = createPlanner();
  return overInputs(args, terminal, ({ project, findings, source, units }) => {
    const all = project === null ? findings : planner.plan(project).findings;
    const spoken = args.has("units") ? units : "metric";
    return {
      findings: all,
      report: all.length === 0 ? "Nothing to say: all fine.\n" : findingsReport(all, units),
      json: {
        schema: "tautrow-check",
        version: 1,
        source,
        findings: all.map((finding) => findingJson(finding, spoken)),
      },
    };
  });
}
