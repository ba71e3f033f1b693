import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What a watering comes to, to be held against another. */
export interface AdviceNumbers {
  readonly sets: number;
  /** Of the set that takes most. */
  readonly flow_lps: number;
  /** Head to spare at the row that has least of it; below 0 it is short. */
  readonly spare_m: number;
  /** Emission uniformity of the block that has least. */
  readonly evenness_ratio: number;
  /** All sets one after another in the month that needs most; null while the season is not known. */
  readonly usual_h: number | null;
  readonly peak_h: number | null;
  readonly hoursADay_h: number;
  /** What is missing; all 0: there is enough water. */
  readonly missing: Missing;
}

/** The worst first. */
export interface Missing {
  /** Head at the worst row, m. */
  readonly head_m: number;
  /** Hours a day beyond those there are. */
  readonly usual_h: number;
  readonly peak_h: number;
  /** Emission uniformity below what is asked for. */
  readonly evenness_ratio: number;
  /** Water of a usual day beyond what comes back in a day. */
  readonly day_l: number;
}

/** A hair of head, hours or evenness is not missing. */
const hair = 1e-3;
/** What a set that the water does not carry lacks at least, where its rows would have head enough. */
const overdrawn_m = 0.01;

/** The numbers of a watering; null while it has no sets. */
export function adviceNumbers(job: WateringJob, watering: Watering | null): AdviceNumbers | null {
  if (watering === null || watering.sets.length === 0) return null;
  const spare_m = watering.sets.reduce((least, set) => Math.min(least, set.spare_m), Infinity);
  const most_h = (of: "usualAll_h" | "all_h") =>
    watering.season?.reduce((most, { peak }) => Math.max(most, peak[of]), 0) ?? null;
  const [usual_h, peak_h] = [most_h("usualAll_h"), most_h("all_h")];
  const { hoursADay_h } = job.water;
  const uneven = watering.blocks.reduce((most, block, i) => {
    const asked = job.blocks[i]?.drip.evenness_ratio ?? 0;
    return block === null ? most : Math.max(most, asked - block.emission_ratio);
  }, 0);
  return {
    sets: watering.sets.length,
    flow_lps: watering.sets.reduce((most, set) => Math.max(most, set.flow_lps), 0),
    spare_m,
    evenness_ratio: watering.blocks.reduce((least, block) => Math.min(least, block?.emission_ratio ?? 1), 1),
    usual_h,
    peak_h,
    hoursADay_h,
    missing: {
      head_m: Math.max(spare_m < -hair ? -spare_m : 0, watering.isShort ? overdrawn_m : 0),
      usual_h: over(usual_h, hoursADay_h),
      peak_h: over(peak_h, hoursADay_h),
      evenness_ratio: uneven > hair ? uneven : 0,
      day_l: over(usualDay_l(watering), job.water.recovery_lph === null ? Infinity : 24 * job.water.recovery_lph),
    },
  };
}

/** True when nothing is missing. */
export function isEnough({ missing }: AdviceNumbers): boolean {
  return inOrder(missing).every((each) => each === 0);
}

/** What takes away less than this of what is missing is no help worth its trouble. */
const worth = 0.1;

/** True when the first thing by which the two differ enough to speak of is less missing in the second. */
export function isBetter(before: AdviceNumbers, after: AdviceNumbers): boolean {
  const now = inOrder(after.missing);
  const gained = inOrder(before.missing).map((missing, i) => {
    const gain = missing - (now[i] ?? 0);
    return Math.abs(gain) > Math.max(hair, worth * missing) ? gain : 0;
  });
  return (gained.find((gain) => gain !== 0) ?? 0) > 0;
}

function inOrder({ head_m, usual_h, peak_h, evenness_ratio, day_l }: Missing): readonly number[] {
  return [head_m, usual_h, peak_h, evenness_ratio, day_l];
}

function over(needed: number | null, there: number): number {
  return needed !== null && needed > there + hair ? needed - there : 0;
}

/** All blocks on the usual day of the month in which they take most; null while the season is not known. */
function usualDay_l({ season }: Watering): number | null {
  if (season === null) return null;
  const days_l = Array.from({ length: 12 }, (_, i) =>
    season.reduce((sum_l, { months }) => sum_l + (months[i]?.usual_lpd ?? 0), 0),
  );
  return Math.max(...days_l);
}
