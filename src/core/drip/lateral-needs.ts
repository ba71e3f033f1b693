import type { Lateral, LateralState } from "../hydraulics/lateral.ts";
import { lateralFrom } from "../hydraulics/lateral-steps.ts";
import { evennessOfRuns } from "./evenness.ts";
import { flushFlow_lps } from "./flushing.ts";
import { blockOfLateral, lateralOf } from "./lateral-of.ts";
import { type LongestLateral, longestByBlock } from "./longest-lateral.ts";
import type { LateralNeed } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * What every lateral of a job needs by itself, in their order. A plain emitter is to give its nominal flow in the mean of the lateral; compensating
 * ones are to have the least pressure of their range at the lowest.
 */
export function lateralNeeds(job: Pick<WateringJob, "blocks" | "laterals" | "water">): readonly LateralNeed[] {
  const longestOf = longestByBlock(job);
  // Rows of a block are alike: what the one before has at its end is where to begin.
  const ends_m = new Map<number, number>();
  return Array.from(job.laterals.block, (block, i) => {
    const lateral = lateralOf(job, i);
    const state = neededState(lateral, job.laterals.tailHeight_m[i] ?? 0, ends_m.get(block));
    const last = lateral.at_m.length - 1;
    if (last >= 0) ends_m.set(block, Number(state.head_m[last]) - Number(lateral.height_m[last]));
    return lateralNeed(job, i, state, longestOf(i));
  });
}

function lateralNeed(
  job: Pick<WateringJob, "blocks" | "laterals" | "water">,
  index: number,
  state: LateralState,
  longest: LongestLateral | null,
): LateralNeed {
  const block = blockOfLateral(job, index);
  const evenness = evennessOfRuns([{ block, from: 0, to: state.outflow_lps.length }], state.outflow_lps);
  return {
    inlet_m: state.inlet_m,
    flow_lps: state.flow_lps,
    lowest_lps: evenness.lowest_lps,
    highest_lps: evenness.highest_lps,
    evenness,
    longest,
    flush_lps: state.flow_lps + flushFlow_lps(block.drip.hoseInside_mm),
  };
}

/** Share of the flow, or m of head, that is near enough. */
const near = 1e-9;
const mostRounds = 60;

/** The lateral while its emitters give what they are to give. `end_m`: about the pressure head at its last emitter. */
export function neededState(lateral: Lateral, tailHeight_m: number, end_m?: number): LateralState {
  const { emitter, height_m } = lateral;
  const count = height_m.length;
  if (count === 0) return lateralFrom(lateral, tailHeight_m);
  const { from_m, nominal_lps, nominalHead_m } = emitter;
  const highest_m = height_m.reduce((most_m, each_m) => Math.max(most_m, each_m), -Infinity);
  if (nominal_lps === 0) return lateralFrom(lateral, highest_m + (from_m ?? nominalHead_m));
  // What is missing at a head of the last emitter, in m as far as it can be told: its root is looked for.
  const over_m =
    from_m === null
      ? (state: LateralState): number => {
          const share = state.flow_lps / (count * nominal_lps);
          const power = Math.min(1 / Math.max(emitter.exponent, 0.05), 4);
          return nominalHead_m * (share ** power - 1);
        }
      : (state: LateralState): number => lowestPressure_m(lateral, state) - from_m;
  const start_m = Number(height_m[count - 1]) + (end_m ?? from_m ?? nominalHead_m);
  return rootOf((tail_m) => lateralFrom(lateral, tail_m), over_m, start_m, near * (from_m ?? nominalHead_m) + near);
}

function lowestPressure_m({ height_m }: Lateral, { head_m }: LateralState): number {
  let least_m = Infinity;
  for (let i = 0; i < head_m.length; i++) least_m = Math.min(least_m, Number(head_m[i]) - Number(height_m[i]));
  return least_m;
}

/** Finds where `over_m`, which rises with the head at the end about as fast as it, is 0: by secants within bounds, halves where they lead out. */
function rootOf(
  stateAt: (tail_m: number) => LateralState,
  over_m: (state: LateralState) => number,
  start_m: number,
  near_m: number,
): LateralState {
  let tail_m = start_m;
  let state = stateAt(tail_m);
  let over = over_m(state);
  let [low, high] = [-Infinity, Infinity];
  let slope = 1;
  for (let round = 0; round < mostRounds && Math.abs(over) > near_m; round++) {
    if (over > 0) high = tail_m;
    else low = tail_m;
    const wished_m = tail_m - over / slope;
    const isInside = wished_m > low && wished_m < high;
    const next_m = isInside
      ? wished_m
      : low === -Infinity
        ? high - 2 * Math.abs(over)
        : (low + Math.min(high, low + 100)) / 2;
    const before = { tail_m, over };
    tail_m = next_m;
    state = stateAt(tail_m);
    over = over_m(state);
    const found = (over - before.over) / (tail_m - before.tail_m);
    slope = Number.isFinite(found) && found > 0.05 ? found : 1;
  }
  return state;
}
