import { batch } from "@preact/signals";
import { refusedEdit } from "../keeping/why-no-edit.ts";
import type { Store } from "../store.ts";

/** Shows any step there is, back or forward. */
export function goToStep(store: Store, at: number): void {
  const history = store.history.value;
  if (!history?.steps[at] || refusedEdit(store).length > 0) return;
  batch(() => {
    store.draft.value = null;
    store.history.value = { ...history, at };
  });
}
