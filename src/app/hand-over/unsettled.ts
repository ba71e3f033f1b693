import { effect } from "@preact/signals";
import type { Thing } from "../../core/exchange/choice.ts";
import type { Store } from "../store.ts";

const fromCuts: readonly Thing[] = ["materials", "coils", "prices", "plan"];

/** Parts of the plan that are still being worked out and go into these things, in words; none when all is as it will stay. */
export function unsettled(store: Store, of: readonly Thing[]): readonly string[] {
  const plan = store.shownPlan.value;
  if (plan === null) return [];
  const isCut = plan.materials?.coils.every(({ plan: cut }) => cut !== null) ?? true;
  return [
    ...(store.drafting.value ? ["what is being moved"] : []),
    ...(store.routeState.value === "laid" ? [] : ["the main line"]),
    ...(store.isWateringAsked.value ? ["the water"] : []),
    ...(isCut || !of.some((thing) => fromCuts.includes(thing)) ? [] : ["how coils are cut"]),
    ...(of.includes("plan") && plan.ground?.plantingArea === null ? ["the planting area"] : []),
  ];
}

/** Waits until everything that goes into these things is worked out, or until it is stopped. */
export function whenSettled(store: Store, of: readonly Thing[], signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    let isOver = false;
    let end: (() => void) | null = null;
    const finish = (): void => {
      isOver = true;
      end?.();
      resolve();
    };
    end = effect(() => {
      if (unsettled(store, of).length === 0 && !isOver) finish();
    });
    if (isOver) end();
    signal.addEventListener("abort", finish, { once: true });
  });
}
