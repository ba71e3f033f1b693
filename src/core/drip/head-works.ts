import { headOf_m } from "../hydraulics/pressure-head.ts";
import type { HeadWork } from "../project/water-settings.ts";

/** Pressure head behind the head works, and how many of their regulators hold it down. */
export interface Passed {
  readonly head_m: number;
  readonly holding: number;
}

/** What is left behind the head works, in the order water meets them, when `head_m` comes in; below 0: not enough to get through. */
export function passHeadWorks(
  headWorks: readonly HeadWork[],
  head_m: number,
  flow_lps: number,
  isDirty: boolean,
): Passed {
  return headWorks.reduce<Passed>(
    (before, work) => {
      const left_m = before.head_m - headWorkLoss_m(work, flow_lps, isDirty);
      const outlet_m = work.outlet_kpa === null ? Infinity : headOf_m(work.outlet_kpa);
      return left_m > outlet_m
        ? { head_m: outlet_m, holding: before.holding + 1 }
        : { head_m: left_m, holding: before.holding };
    },
    { head_m, holding: 0 },
  );
}

/** What one part loses at a flow: with the square of the flow where it is known for one flow, else always the same. */
export function headWorkLoss_m(work: HeadWork, flow_lps: number, isDirty: boolean): number {
  const loss_m = headOf_m(isDirty ? Math.max(work.loss_kpa, work.dirtyLoss_kpa) : work.loss_kpa);
  const { atFlow_lph } = work;
  return atFlow_lph === null || atFlow_lph <= 0 ? loss_m : loss_m * ((flow_lps * 3600) / atFlow_lph) ** 2;
}
