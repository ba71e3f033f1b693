import type { Finding } from "../../core/finding.ts";
import type { Outcome } from "../../core/outcome.ts";
import type { Project } from "../../core/project/project.ts";
import { current, type History, withStep } from "../history.ts";
import { refusedEdit } from "../keeping/why-no-edit.ts";
import type { Store } from "../store.ts";

/** What an edit is called in the list of steps ("Row spacing 2.5 m"), and which edits before it are the same step. */
export interface StepName {
  readonly name: string;
  readonly joins?: string;
}

export type Change = (project: Project) => Outcome<Project>;

/**
 * The one way to change the project: a named step that can be undone. Returns what speaks against it (then nothing is changed), or an
 * empty list.
 */
export function edit(store: Store, { name, joins }: StepName, change: Change): readonly Finding[] {
  return fromLastStep(store, change, (history, project) => {
    store.history.value = withStep(history, { name, project, joins: joins ?? null });
    store.draft.value = null;
  });
}

/**
 * Shows what an edit would give while something is held: not a step yet. Every draft is made from the last step, so that a drag leaves
 * no trace of its way. `edit` makes it a step, `dropDraft` takes it away.
 */
export function draft(store: Store, change: Change): readonly Finding[] {
  return fromLastStep(store, change, (_, project) => {
    store.draft.value = project;
  });
}

/** Shows the last step again. */
export function dropDraft(store: Store): void {
  store.draft.value = null;
}

/** Hands on what the change makes of the last step; what speaks against it instead, when an edit may not be made or comes to nothing. */
function fromLastStep(
  store: Store,
  change: Change,
  take: (history: History, project: Project) => void,
): readonly Finding[] {
  const history = store.history.value;
  if (!history) return [];
  const refused = refusedEdit(store);
  if (refused.length > 0) return refused;
  const changed = change(current(history).project);
  if (!changed.ok) return changed.findings;
  take(history, changed.value);
  return [];
}
