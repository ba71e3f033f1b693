import { batch } from "@preact/signals";
import { type History, redone, undone } from "../history.ts";
import { refusedEdit } from "../keeping/why-no-edit.ts";
import type { Store } from "../store.ts";

/** Takes the last step back. */
export function undo(store: Store): void {
  go(store, undone);
}

/** Brings a step again that was taken back. */
export function redo(store: Store): void {
  go(store, redone);
}

function go(store: Store, move: (history: History) => History): void {
  const history = store.history.value;
  if (!history || refusedEdit(store).length > 0) return;
  batch(() => {
    store.draft.value = null;
    store.history.value = move(history);
  });
}
