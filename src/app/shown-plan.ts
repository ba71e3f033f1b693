import { effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Plan } from "../core/plan.ts";

const pace_ms = 300;

/**
 * The plan as the lists show it: the same as the plan, but while the rows are being turned it follows a few times a second,
 * so that the frames belong to the map.
 */
export function createShownPlan(
  plan: ReadonlySignal<Plan | null>,
  turning: Signal<boolean>,
): ReadonlySignal<Plan | null> {
  const shown = signal<Plan | null>(plan.peek());
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const newest = plan.value;
    if (!turning.value) {
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
