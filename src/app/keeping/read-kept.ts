import { parseProject } from "../../core/project/parse.ts";
import type { Project } from "../../core/project/project.ts";
import { text } from "../../core/units.ts";
import type { Unreadable } from "./keeping-state.ts";
import type { ProjectRecord } from "./records.ts";
import type { Shelf } from "./shelf.ts";

export type ReadKept =
  | { readonly kind: "read"; readonly record: ProjectRecord; readonly project: Project }
  | { readonly kind: "unreadable"; readonly unreadable: Unreadable }
  | { readonly kind: "missing" };

/** A kept project; when its newest text can not be read, why, and the youngest older one that can. */
export async function readKept(shelf: Shelf, id: string): Promise<ReadKept> {
  const found = await shelf.read(id);
  if (!found) return { kind: "missing" };
  const { record } = found;
  const read = found.text === null ? null : parseProject(found.text);
  if (read?.ok) return { kind: "read", record, project: read.value };
  const first = read?.findings[0];
  const reason = first ? text(first.message, "metric") : "The browser has lost its text.";
  const earlier = await earlierText(shelf, record);
  return { kind: "unreadable", unreadable: { record, text: found.text, reason, earlier } };
}

async function earlierText(shelf: Shelf, record: ProjectRecord): Promise<Unreadable["earlier"]> {
  for (const { revision, at } of record.revisions.toReversed()) {
    if (revision === record.revision) continue;
    const older = await shelf.readText(record.id, revision);
    if (older !== null && parseProject(older).ok) return { at, text: older };
  }
  return null;
}
