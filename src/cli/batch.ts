import {
  type Finding,
  hasError,
  type Project,
  parseProject,
  type UnitSystem,
  unitSystems,
  withSettings,
} from "../core/index.ts";
import type { Arguments } from "./arguments.ts";
import { countOf } from "./count-of.ts";
import { folderNames, type Input, inputNames, readInput } from "./inputs.ts";
import { overridesOf } from "./overrides.ts";
import { pricesOverride } from "./prices.ts";
import { printable } from "./printable.ts";
import { exitCode, type Terminal, UsageError } from "./terminal.ts";

/** One input, read, with the overrides of the command line in it. */
export interface Job {
  /** null when nothing could be made of the text; the findings say why. */
  readonly project: Project | null;
  readonly findings: readonly Finding[];
  /** Name of the input when there are several, else null. */
  readonly source: string | null;
  /** Folder of its own when there are several, else "". */
  readonly folder: string;
  /** Units to speak in. */
  readonly units: UnitSystem;
}

/** What a command makes of one input. */
export interface Answer {
  readonly findings: readonly Finding[];
  readonly report: string;
  /** null when the command has no JSON to give. */
  readonly json: object | null;
}

/**
 * Runs a command over all inputs, one after another, and gives the exit code. With --json a single input gives one object; several
 * give a JSON text sequence (RFC 7464: record separator, object, line feed). A path that cannot be read is said, and the rest goes on.
 */
export async function overInputs(
  args: Arguments,
  terminal: Terminal,
  work: (job: Job) => Answer | Promise<Answer>,
): Promise<number> {
  const units = unitsOf(args);
  const overrides = [...overridesOf(args), ...(await pricesOverride(args, terminal))];
  const { inputs, isComplete } = await readAll(inputNames(args.files, terminal), terminal);
  const isBatch = inputs.length > 1 || args.files.length > 1;
  const folders = folderNames(
    inputs.map((input) => input.name),
    terminal.folder,
  );
  let code: number = isComplete ? exitCode.fine : exitCode.wrongUsage;
  for (const [index, input] of inputs.entries()) {
    const answer = await work(read(input, overrides, units, isBatch ? (folders[index] ?? "") : "", isBatch));
    if (hasError(answer.findings)) code = Math.max(code, exitCode.findingError);
    if (args.has("json")) terminal.out(jsonText(answer.json, isBatch));
    else terminal.out(printable(isBatch && answer.report !== "" ? `${input.name}\n${answer.report}\n` : answer.report));
    if (isBatch) {
      const errors = answer.findings.filter((finding) => finding.severity === "error").length;
      terminal.note(
        `${index + 1} of ${inputs.length}: ${input.name}, ${errors === 0 ? "fine" : countOf(errors, "error")}\n`,
      );
    }
  }
  return code;
}

async function readAll(names: readonly string[], terminal: Terminal) {
  const inputs: Input[] = [];
  let isComplete = true;
  for (const name of names) {
    try {
      inputs.push(...(await readInput(name, terminal)));
    } catch (problem) {
      if (!(problem instanceof UsageError)) throw problem;
      terminal.note(`${problem.message}\n`);
      isComplete = false;
    }
  }
  return { inputs, isComplete };
}

/** One input, read, with overrides in it. */
export function read(
  input: Input,
  overrides: ReturnType<typeof overridesOf>,
  units: UnitSystem | null,
  folder: string,
  isBatch: boolean,
): Job {
  const source = isBatch ? input.name : null;
  const parsed = parseProject(input.text);
  if (!parsed.ok) return { project: null, findings: parsed.findings, source, folder, units: units ?? "metric" };
  const changed = overrides.length === 0 ? parsed : withSettings(parsed.value, overrides);
  const project = changed.ok ? changed.value : null;
  return { project, findings: changed.findings, source, folder, units: units ?? parsed.value.units };
}

/** A single answer is laid out for reading; the records of a sequence are one line each. */
function jsonText(json: object | null, isBatch: boolean): string {
  return isBatch ? `\u001e${JSON.stringify(json)}\n` : `${JSON.stringify(json, null, 2)}\n`;
}

/** The units that are asked for, or null. */
export function unitsOf(args: Arguments): UnitSystem | null {
  const given = args.value("units");
  if (given === null) return null;
  const known = unitSystems.find((each) => each === given);
  if (known !== undefined) return known;
  throw new UsageError(`--units is ${unitSystems.join(", ")}, not "${given}".`);
}
