import { batch } from "@preact/signals";
import type { Project } from "../../core/project/project.ts";
import { begin } from "../history.ts";
import type { Source } from "../keeping/keeping-state.ts";
import type { Store } from "../store.ts";

/** Puts a project on the page in place of what was there, with nothing to undo. Where it came from decides how it is kept. */
export function beginProject(store: Store, project: Project, source: Source = { kind: "fresh" }): void {
  batch(() => {
    store.keeping.source.value = source;
    store.history.value = begin(project);
    store.draft.value = null;
    store.units.value = project.units;
    store.blockId.value = project.blocks[0]?.id ?? null;
    store.row.value = null;
    store.finding.value = null;
    store.sweep.value = null;
    store.refusal.value = null;
    store.keeping.unreadable.value = null;
    store.opened.value += 1;
  });
}

/** Takes the project off the page: the first screen is shown. */
export function closeProject(store: Store): void {
  batch(() => {
    store.keeping.source.value = { kind: "fresh" };
    store.history.value = null;
    store.draft.value = null;
    store.blockId.value = null;
    store.row.value = null;
    store.finding.value = null;
    store.sweep.value = null;
    store.opened.value = 0;
  });
}
