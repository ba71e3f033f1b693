import type { Store } from "../store.ts";

const step_deg = 1;

/** Computes the bearing chart of the shown block. */
export function sweepBearings(store: Store): void {
  const [project, block] = [store.project.value, store.blockId.value];
  store.sweep.value = project && block !== null ? store.planner.sweep(project, block, step_deg) : null;
}
