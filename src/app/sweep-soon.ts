import { effect } from "@preact/signals";
import { sweepBearings } from "./commands/sweep-bearings.ts";
import type { Store } from "./store.ts";

const quiet_ms = 220;

/** Keeps the bearing chart up to date, a moment after the last change, so that it never stands in the way of a drag. */
export function followWithSweep(store: Store): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const isOpen = store.project.value !== null && store.blockId.value !== null;
    clearTimeout(timer);
    if (isOpen) timer = setTimeout(() => sweepBearings(store), quiet_ms);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
