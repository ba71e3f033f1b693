import { basename, extname } from "node:path";
import {
  type Finding,
  type FoundThing,
  hasError,
  joinedPoints,
  likelyRoles,
  type Project,
  parseProject,
  text,
  type UnitSystem,
  withFound,
} from "../../core/index.ts";
import { readFile } from "../../readers/read-file.ts";
import type { FoundFile, Question, ReadingAnswers } from "../../readers/reading.ts";
import type { Arguments } from "../arguments.ts";
import { read, unitsOf } from "../batch.ts";
import { countOf } from "../count-of.ts";
import { withFileBytes } from "../file-bytes.ts";
import { findingsReport } from "../findings-report.ts";
import { foundReport } from "../found-report.ts";
import { readInput } from "../inputs.ts";
import { printable } from "../printable.ts";
import { isAbout, kindOf, type RoleRule, roleRules, ruledRole } from "../role-rules.ts";
import { exitCode, type Terminal, UsageError } from "../terminal.ts";
import { writeProject } from "../write-project.ts";

/**
 * `tautrow import`: a project with what files of other formats hold, on standard output or with --out in a file; what became of each thing
 * on standard error. With a question open, or a file that cannot be read, nothing is written. Gives the exit code.
 */
export async function importCommand(args: Arguments, terminal: Terminal): Promise<number> {
  if (args.files.length === 0) throw new UsageError("Give a file of outlines, lines or points.");
  const answers = answersOf(args);
  const rules = roleRules(args.values("role"));
  const begun = await beginning(args, terminal);
  const say = (findings: readonly Finding[]): void => {
    if (findings.length > 0) terminal.note(printable(findingsReport(findings, begun.units)));
  };
  if (begun.project === null) {
    say(begun.findings);
    return exitCode.findingError;
  }
  let project = begun.project;
  let taken = 0;
  const unused = new Set(rules);
  const joins = args.values("join");
  const unusedJoins = new Set(joins);
  for (const name of args.files) {
    const found = await reading(name, answers, terminal);
    say(found.findings);
    if (found.file === null) return nothingWritten(terminal, exitCode.findingError);
    if (found.file.questions.length > 0) {
      terminal.note(printable(found.file.questions.map((each) => asked(each, begun.units)).join("")));
      return nothingWritten(terminal, exitCode.findingError);
    }
    const features = joins.reduce((things, join) => joined(things, join, unusedJoins), found.file.features);
    const into = takenInto(project, features, rules, unused);
    terminal.note(printable(`${basename(name)}: ${found.file.format}, read as ${found.file.system}\n${into.report}`));
    say(into.findings);
    project = into.project;
    taken += into.taken;
  }
  const [apart] = unusedJoins;
  if (apart !== undefined) {
    throw new UsageError(`--join ${apart}: no file has from 3 to 500 points of that layer, and nothing else in it.`);
  }
  const [idle] = unused;
  if (idle !== undefined) throw new UsageError(`--role ${idle.said}: nothing in the files is called so.`);
  if (taken === 0) return nothingWritten(terminal, exitCode.findingError);
  say(project.findings.filter((finding) => finding.severity === "error"));
  return handOver(project, taken, args.value("out"), terminal);
}

/** The project to take things into: that of --into, else a new one named after the first file. */
async function beginning(args: Arguments, terminal: Terminal) {
  const into = args.value("into");
  if (into !== null) {
    const [input] = await readInput(into, terminal);
    if (input === undefined) throw new UsageError(`${into} is empty.`);
    return read(input, [], unitsOf(args), "", false);
  }
  const [first = ""] = args.files;
  const units = unitsOf(args) ?? "metric";
  const settings = { version: 1, name: basename(first, extname(first)), units };
  const project = parseProject(JSON.stringify({ type: "FeatureCollection", features: [], tautrow: settings }));
  return { project: project.ok ? project.value : null, findings: project.findings, units };
}

async function reading(
  name: string,
  answers: ReadingAnswers,
  terminal: Terminal,
): Promise<{ readonly file: FoundFile | null; readonly findings: readonly Finding[] }> {
  const { progress } = terminal;
  const called = basename(name);
  const outcome = await withFileBytes(name, terminal, (bytes) =>
    readFile(
      { name: called, size: bytes.size, slice: (start, end) => bytes.slice(start, end) },
      answers,
      progress === null ? {} : { progress: (share) => progress(`Reading ${called}: ${Math.round(100 * share)} %`) },
    ),
  );
  progress?.("");
  return { file: outcome.ok ? outcome.value : null, findings: outcome.findings };
}

/** Things with the points of a layer as one outline, in the place of the first of them. */
function joined(things: readonly FoundThing[], layer: string, unused: Set<string>): readonly FoundThing[] {
  const isMeant = (thing: FoundThing): boolean =>
    layer.toLowerCase() === "points"
      ? kindOf(thing) === "point"
      : thing.layer?.trim().toLowerCase() === layer.trim().toLowerCase();
  const points = things.filter(isMeant);
  const outline = joinedPoints(points);
  if (outline === null) return things;
  unused.delete(layer);
  return things.flatMap((thing) => (thing === points[0] ? [outline] : isMeant(thing) ? [] : [thing]));
}

/** The project with the things of one file: roles by the rules, else the likely ones. Rules that are about something are used. */
function takenInto(
  project: Project,
  features: readonly FoundThing[],
  rules: readonly RoleRule[],
  unused: Set<RoleRule>,
) {
  for (const rule of unused) if (features.some((thing) => isAbout(rule, thing))) unused.delete(rule);
  const likely = likelyRoles(features, project);
  const chosen = features.map((thing, i) => {
    const ruled = ruledRole(rules, thing);
    return { thing, role: ruled === undefined ? (likely[i] ?? null) : ruled };
  });
  const wanted = chosen.flatMap(({ thing, role }) => (role === null ? [] : [{ thing, role }]));
  const outcome = wanted.length === 0 ? null : withFound(project, wanted);
  const keysOf = outcome?.ok === true ? outcome.value.keysOf : [];
  const keysByThing = new Map(wanted.map(({ thing }, i) => [thing, keysOf[i] ?? []]));
  const fates = chosen.map(({ thing, role }) => ({ thing, role, keys: keysByThing.get(thing) ?? [] }));
  return {
    project: outcome?.ok === true ? outcome.value.project : project,
    taken: outcome?.ok === true ? outcome.value.taken : 0,
    findings: outcome?.findings ?? [],
    report: foundReport(fates),
  };
}

/** Bearings are told in pasted text only: no file asks for their north. */
const answeredBy: Readonly<Record<Question["about"], string>> = {
  system: "--crs",
  unit: "--unit",
  order: "--swap",
  north: "",
};

/** A question, with the options that answer it. */
function asked({ about, asked: question, offered }: Question, units: UnitSystem): string {
  const option = answeredBy[about];
  const lines = offered.map(
    ({ value, told }) => `  ${option} ${/\s/.test(value) ? `"${value}"` : value}  ${text(told, units)}\n`,
  );
  const other = about === "system" ? `  ${option} EPSG:26910  or whichever it is\n` : "";
  return `${text(question, units)}\n${lines.join("")}${other}`;
}

function answersOf(args: Arguments): ReadingAnswers {
  const unit = args.value("unit");
  const known = (["m", "ft", "us-ft"] as const).find((each) => each === unit) ?? null;
  if (unit !== null && known === null) throw new UsageError(`--unit takes m, ft or us-ft, not "${unit}".`);
  const swap = args.value("swap");
  if (swap !== null && swap !== "yes" && swap !== "no") throw new UsageError(`--swap takes yes or no, not "${swap}".`);
  return { system: args.value("crs"), unit: known, isSwapped: swap === null ? null : swap === "yes" };
}

function nothingWritten(terminal: Terminal, code: number): number {
  terminal.note("Nothing was written.\n");
  return code;
}

async function handOver(project: Project, taken: number, out: string | null, terminal: Terminal): Promise<number> {
  await writeProject(project, `Took in ${countOf(taken, "thing")}.`, out, terminal);
  return hasError(project.findings) ? exitCode.findingError : exitCode.fine;
}
