import {
  comparePlans,
  comparisonJson,
  createPlanner,
  type Finding,
  hasError,
  type Json,
  type Plan,
  type Project,
  whatIfs,
  withSettings,
} from "../../core/index.ts";
import type { Arguments } from "../arguments.ts";
import { read, unitsOf } from "../batch.ts";
import { comparisonReport } from "../comparison-report.ts";
import { findingsReport } from "../findings-report.ts";
import { readInput } from "../inputs.ts";
import { assignment, overridesOf } from "../overrides.ts";
import { pricesOverride } from "../prices.ts";
import { printable } from "../printable.ts";
import { exitCode, type Terminal, UsageError } from "../terminal.ts";

/** `tautrow compare`: two projects, or one and what some changes would make of it, side by side. Gives the exit code. */
export async function compareCommand(args: Arguments, terminal: Terminal): Promise<number> {
  const [first, second, ...more] = args.files;
  const isChanged = args.values("with").length + args.values("what-if").length > 0;
  if (first === undefined || more.length > 0 || (second === undefined) !== isChanged) {
    throw new UsageError("Give two files, or one file and --with PATH=VALUE or --what-if NAME.");
  }
  const overrides = [...overridesOf(args), ...(await pricesOverride(args, terminal))];
  const left = await readOne(first, overrides, terminal);
  const right = second === undefined ? changed(left, args) : await readOne(second, overrides, terminal);
  const units = unitsOf(args) ?? left.project?.units ?? "metric";
  if (left.project === null || right.project === null) {
    const said = left.project === null ? left.findings : right.findings;
    terminal.note(printable(findingsReport(said, units)));
    return exitCode.findingError;
  }
  const planOf = (project: Project): Plan => createPlanner().plan(project);
  const [before, after] = [planOf(left.project), planOf(right.project)];
  const names = { left: first, right: second ?? [...args.values("what-if"), ...args.values("with")].join(", ") };
  const comparison = comparePlans(before, after);
  if (args.has("json")) {
    terminal.out(
      `${JSON.stringify(comparisonJson(comparison, names, args.has("units") ? units : "metric"), null, 2)}\n`,
    );
  } else terminal.out(printable(comparisonReport(comparison, names, left.project.materials.currency, units)));
  return hasError(before.findings) || hasError(after.findings) ? exitCode.findingError : exitCode.fine;
}

interface Read {
  readonly project: Project | null;
  readonly findings: readonly Finding[];
}

async function readOne(
  file: string,
  overrides: readonly (readonly [string, Json])[],
  terminal: Terminal,
): Promise<Read> {
  const [input] = await readInput(file, terminal);
  if (input === undefined) throw new UsageError(`${file} is empty.`);
  return read(input, overrides, null, "", false);
}

/** The project with what --what-if and --with change of it. */
function changed({ project, findings }: Read, args: Arguments): Read {
  if (project === null) return { project, findings };
  const block = args.value("block") ?? project.blocks[0]?.id ?? "";
  const offered = whatIfs(project, block);
  const named = args.values("what-if").flatMap((name) => {
    const found = offered.find(({ id }) => id === name);
    if (found !== undefined) return found.edits;
    const all = offered.map(({ id, name: what }) => `  ${id.padEnd(22)}${what}`).join("\n");
    throw new UsageError(`There is no what-if "${name}" for block ${block} of this project. There is:\n${all}`);
  });
  const given = args.values("with").map((text) => assignment("with", text));
  const outcome = withSettings(project, [...named, ...given]);
  return outcome.ok
    ? { project: outcome.value, findings: outcome.findings }
    : { project: null, findings: outcome.findings };
}
