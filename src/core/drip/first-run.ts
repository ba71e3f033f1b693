import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { CupCheck, EmitterStates, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** A cup is held under an emitter for so long. */
const cup_s = 180;

/**
 * What the first run is checked by: in every set the lateral that holds the lowest pressure and the one that holds the highest, with what runs into a
 * cup in three minutes at its first, middle and last vine, and the pressure at the far end of its hose. Common practice, no source.
 */
export function firstRun(
  job: Pick<WateringJob, "laterals">,
  sets: readonly Pick<WaterSet, "laterals">[],
  emitters: EmitterStates,
): readonly CupCheck[] {
  return sets.flatMap(({ laterals }, set) => {
    const watered = laterals.filter((lateral) => emittersOf(job, lateral).count > 0);
    const spans = watered.map((lateral) => ({ lateral, ...pressures(job, lateral, emitters) }));
    const [first] = spans;
    if (first === undefined) return [];
    const worst = spans.reduce((low, each) => (each.lowest_m < low.lowest_m ? each : low), first);
    const best = spans.reduce((high, each) => (each.highest_m > high.highest_m ? each : high), first);
    return [...new Set([worst.lateral, best.lateral])].map((lateral) => cupCheck(job, set, lateral, emitters));
  });
}

function cupCheck(
  job: Pick<WateringJob, "laterals">,
  set: number,
  lateral: number,
  { flow_lps, pressure_m }: EmitterStates,
): CupCheck {
  const { from, count } = emittersOf(job, lateral);
  const last = from + count - 1;
  const tail_m =
    Number(pressure_m[last]) + Number(job.laterals.height_m[last]) - Number(job.laterals.tailHeight_m[lateral]);
  const places = [...new Set([from, from + Math.floor((count - 1) / 2), last])];
  return {
    set,
    lateral,
    cups: places.map((emitter) => ({ emitter, volume_l: Number(flow_lps[emitter]) * cup_s })),
    tail_kpa: pressureOf_kpa(Math.max(0, tail_m)),
  };
}

function emittersOf({ laterals }: Pick<WateringJob, "laterals">, lateral: number) {
  const from = laterals.offsets[lateral] ?? 0;
  return { from, count: (laterals.offsets[lateral + 1] ?? 0) - from };
}

function pressures(job: Pick<WateringJob, "laterals">, lateral: number, { pressure_m }: EmitterStates) {
  const { from, count } = emittersOf(job, lateral);
  let [lowest_m, highest_m] = [Infinity, -Infinity];
  for (let i = from; i < from + count; i++) {
    lowest_m = Math.min(lowest_m, Number(pressure_m[i]));
    highest_m = Math.max(highest_m, Number(pressure_m[i]));
  }
  return { lowest_m, highest_m };
}
