import { effect } from "@preact/signals";
import { sweepBearingsSlowly } from "./commands/sweep-bearings.ts";
import type { Store } from "./store.ts";

const quiet_ms = 220;

/** Keeps the bearing chart up to date, a moment after the last change, so that it never stands in the way of a drag. */
export function followWithSweep(store: Store): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopSweep: (() => void) | undefined;
  const stop = effect(() => {
    const isOpen = store.project.value !== null && store.blockId.value !== null;
    clearTimeout(timer);
    stopSweep?.();
    if (isOpen && !store.drafting.value) {
      timer = setTimeout(() => {
        stopSweep = sweepBearingsSlowly(store);
      }, quiet_ms);
    }
  });
  return () => {
    clearTimeout(timer);
    stopSweep?.();
    stop();
  };
}
