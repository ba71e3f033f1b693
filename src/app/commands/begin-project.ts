import { batch } from "@preact/signals";
import type { Project } from "../../core/project/project.ts";
import { begin } from "../history.ts";
import type { Store } from "../store.ts";

/** Puts a project on the page in place of what was there, with nothing to undo. */
export function beginProject(store: Store, project: Project): void {
  batch(() => {
    store.history.value = begin(project);
    store.draft.value = null;
    store.units.value = project.units;
    store.blockId.value = project.blocks[0]?.id ?? null;
    store.row.value = null;
    store.finding.value = null;
    store.sweep.value = null;
    store.refusal.value = null;
    store.opened.value += 1;
  });
}
