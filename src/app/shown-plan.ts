import { effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Plan } from "../core/plan.ts";

const pace_ms = 300;

/**
 * The plan as the lists show it: the same as the plan, but while something is held it follows a few times a second,
 * so that the frames belong to the map.
 */
export function createShownPlan(
  plan: ReadonlySignal<Plan | null>,
  drafting: ReadonlySignal<boolean>,
): ReadonlySignal<Plan | null> {
  const shown = signal<Plan | null>(plan.peek());
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const newest = plan.value;
    if (!drafting.value) {
      clearTimeout(timer);
      timer = undefined;
      shown.value = newest;
      return;
    }
    timer ??= setTimeout(() => {
      timer = undefined;
      shown.value = plan.peek();
    }, pace_ms);
  });
  return shown;
}
