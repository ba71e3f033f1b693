import type { Store } from "../store.ts";

const step_deg = 1;
/** Time that is taken at once, so that a frame can be drawn in between. */
const slice_ms = 8;

/** Computes the bearing chart of the shown block at once. */
export function sweepBearings(store: Store): void {
  const [project, block] = [store.project.value, store.blockId.value];
  store.sweep.value = project && block !== null ? store.planner.sweep(project, block, step_deg) : null;
}

/** Computes the bearing chart a little at a time; what it gives back stops it. */
export function sweepBearingsSlowly(store: Store): () => void {
  const [project, block] = [store.project.peek(), store.blockId.peek()];
  const work = project && block !== null ? store.planner.sweepWork(project, block, step_deg) : null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const slice = (): void => {
    const until = performance.now() + slice_ms;
    while (work?.advance()) {
      if (performance.now() < until) continue;
      timer = setTimeout(slice);
      return;
    }
    sweepBearings(store);
  };
  slice();
  return () => clearTimeout(timer);
}
