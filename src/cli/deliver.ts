import { join, resolve } from "node:path";
import { handOver, type OutFile, type Plan, type Thing, usualChoice } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { findingsReport } from "./findings-report.ts";
import { whyUnreadable } from "./inputs.ts";
import { makeFolder } from "./make-folder.ts";
import { contentOf } from "./out-file.ts";
import { printable } from "./printable.ts";
import { type Terminal, UsageError } from "./terminal.ts";
import { writeWhole } from "./write-whole.ts";

/** What is handed over with every plan without being asked for one by one. */
const delivered = [
  { as: "geojson", of: ["rows", "vines", "posts", "route", "pipes", "fittings"] },
  { as: "csv", of: ["rows", "stations", "materials", "coils"] },
  { as: "json", of: ["plan"] },
] as const satisfies readonly { readonly as: string; readonly of: readonly Thing[] }[];

/** Writes the files that are handed over with every plan into `out`, or into a folder of it. */
export async function writePlan(plan: Plan, out: string, folder: string, terminal: Terminal): Promise<void> {
  const files: OutFile[] = [];
  for (const each of delivered) {
    const handed = handOver(plan, { ...usualChoice, ...each }, terminal.now);
    // What the plan does not have yet was not asked for by name: its file is there, and empty.
    const said = (handed.ok ? handed.value.findings : handed.findings).filter(
      ({ code }) => code !== "exchange/nothing-of-kind",
    );
    if (said.length > 0) terminal.note(printable(findingsReport(said, plan.project.units)));
    if (handed.ok) files.push(...handed.value.files);
  }
  await writeFiles(files, out, folder, terminal);
}

/** Writes files into `out`, or into a folder of it. Throws a UsageError where that cannot be done. */
export async function writeFiles(
  files: readonly OutFile[],
  out: string,
  folder: string,
  terminal: Terminal,
): Promise<void> {
  const target = resolve(terminal.folder, out, folder);
  try {
    await makeFolder(target);
    for (const file of files) await writeWhole(join(target, file.name), await contentOf(file));
  } catch (problem) {
    throw new UsageError(`${join(out, folder)} ${whyUnreadable(problem)}`);
  }
  terminal.note(
    `Wrote ${countOf(files.length, "file")} to ${join(out, folder)}: ${files.map(({ name }) => name).join(", ")}\n`,
  );
}
