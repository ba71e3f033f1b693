import { resolve } from "node:path";
import { type Project, serializeProject } from "../core/index.ts";
import { whyUnreadable } from "./inputs.ts";
import { printable } from "./printable.ts";
import { type Terminal, UsageError } from "./terminal.ts";
import { writeWhole } from "./write-whole.ts";

/** Writes a project to a file, or to standard output without one, and says what was taken in. Throws a UsageError for a path that cannot be written. */
export async function writeProject(
  project: Project,
  said: string,
  out: string | null,
  terminal: Terminal,
): Promise<void> {
  if (out === null) terminal.out(serializeProject(project));
  else {
    try {
      await writeWhole(resolve(terminal.folder, out), serializeProject(project));
    } catch (problem) {
      throw new UsageError(`${out} ${whyUnreadable(problem)}`);
    }
  }
  terminal.note(printable(`${said}${out === null ? "" : ` Wrote ${out}.`}\n`));
}
