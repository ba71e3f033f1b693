import { batch } from "@preact/signals";
import type { Store } from "../store.ts";

/** Shows any step there is, back or forward. */
export function goToStep(store: Store, at: number): void {
  const history = store.history.value;
  if (!history?.steps[at]) return;
  batch(() => {
    store.draft.value = null;
    store.history.value = { ...history, at };
  });
}
