import { join, resolve } from "node:path";
import { type ExportFormat, fileName, formats, type Plan } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { whyUnreadable } from "./inputs.ts";
import { makeFolder } from "./make-folder.ts";
import { type Terminal, UsageError } from "./terminal.ts";
import { writeWhole } from "./write-whole.ts";

/** Writes the files that are handed over with every plan into `out`, or into a folder of it. */
export function writePlan(plan: Plan, out: string, folder: string, terminal: Terminal): Promise<void> {
  const delivered = formats.filter((format) => format.isDelivered);
  return writeFiles(delivered, plan, out, folder, terminal);
}

/** Writes one file a format. */
export async function writeFiles(
  chosen: readonly ExportFormat[],
  plan: Plan,
  out: string,
  folder: string,
  terminal: Terminal,
): Promise<void> {
  const target = resolve(terminal.folder, out, folder);
  try {
    await makeFolder(target);
    for (const format of chosen) {
      await writeWhole(join(target, fileName(format)), format.text(plan));
    }
  } catch (problem) {
    throw new UsageError(`${join(out, folder)} ${whyUnreadable(problem)}`);
  }
  terminal.note(
    `Wrote ${countOf(chosen.length, "file")} to ${join(out, folder)}: ${chosen.map(fileName).join(", ")}\n`,
  );
}
