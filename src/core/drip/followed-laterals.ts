import { lateralFrom } from "../hydraulics/lateral-steps.ts";
import { lateralOf } from "./lateral-of.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Flow of a lateral by total head at its inlet: straight between points, both rising. */
export interface LateralFlow {
  readonly inlet_m: readonly number[];
  readonly flow_lps: readonly number[];
}

/** So many laterals of a block in a set are followed; the others are taken to be like the one of these that is most like them. */
const followed = 4;
const points = 28;

/** Every lateral of a set: the followed one most like it, moved to its height and scaled to what it takes while the set runs. */
export function lateralFlows(
  job: WateringJob,
  { emitters }: Watering,
  { laterals, nodes }: WaterSet,
  highest_m: number,
): ReadonlyMap<number, LateralFlow> {
  const { block, offsets } = job.laterals;
  const count = (lateral: number) => (offsets[lateral + 1] ?? 0) - (offsets[lateral] ?? 0);
  const blockAt = (lateral: number) => block[lateral] ?? 0;
  const tables = representatives(laterals, blockAt, count).map((lateral) => {
    return { lateral, flow: lateralFlow(job, lateral, highest_m) };
  });
  const inlets = new Map([...nodes.lateral].map((lateral, node) => [lateral, nodes.head_m[node] ?? 0]));
  return new Map(
    laterals.map((lateral) => {
      const [like] = tables
        .filter((each) => blockAt(each.lateral) === blockAt(lateral))
        .sort((a, b) => Math.abs(count(a.lateral) - count(lateral)) - Math.abs(count(b.lateral) - count(lateral)));
      if (like === undefined) throw new Error(`no lateral of the block of lateral ${lateral} is followed`);
      const up_m = lowestEmitter_m(job, lateral) - lowestEmitter_m(job, like.lateral);
      const inlet_m = like.flow.inlet_m.map((each_m) => each_m + up_m);
      const takes_lps = sumOf(emitters?.flow_lps.subarray(offsets[lateral], offsets[lateral + 1]) ?? []);
      const read = readLateralFlow({ ...like.flow, inlet_m }, inlets.get(lateral) ?? 0);
      const isRunning = takes_lps > 0 && read.flow_lps > 0;
      const scale = isRunning ? takes_lps / read.flow_lps : count(lateral) / Math.max(count(like.lateral), 1);
      return [lateral, { inlet_m, flow_lps: like.flow.flow_lps.map((each) => each * scale) }];
    }),
  );
}

/** Flow at a head, and how fast it grows, L/s per m; none below the first point, past the last as before it. */
export function readLateralFlow({ inlet_m, flow_lps }: LateralFlow, head_m: number) {
  const last = inlet_m.length - 1;
  if (last < 1 || head_m <= Number(inlet_m[0])) return { flow_lps: 0, growth: 0 };
  let i = 1;
  while (i < last && Number(inlet_m[i]) < head_m) i++;
  const [from_m, from_lps] = [Number(inlet_m[i - 1]), Number(flow_lps[i - 1])];
  const growth = (Number(flow_lps[i]) - from_lps) / (Number(inlet_m[i]) - from_m);
  return { flow_lps: from_lps + growth * (head_m - from_m), growth };
}

/** By steps back from heads at its last emitter: from none, densest where emitters begin to hold their flow, to the highest. */
function lateralFlow(job: WateringJob, index: number, highest_m: number): LateralFlow {
  const lateral = lateralOf(job, index);
  const lowest_m = lowestEmitter_m(job, index);
  const range_m = Math.max(highest_m - lowest_m, 1);
  const tails = Array.from({ length: points }, (_, i) => lowest_m + range_m * (i / (points - 1)) ** 2);
  const { from_m } = lateral.emitter;
  if (from_m !== null) tails.push(Number(lateral.height_m.at(-1) ?? lowest_m) + from_m);
  const table = { inlet_m: [] as number[], flow_lps: [] as number[] };
  for (const tail_m of tails.sort((a, b) => a - b)) {
    const state = lateralFrom(lateral, tail_m);
    if (state.inlet_m <= (table.inlet_m.at(-1) ?? -Infinity)) continue;
    table.inlet_m.push(state.inlet_m);
    table.flow_lps.push(Math.max(state.flow_lps, table.flow_lps.at(-1) ?? 0));
  }
  return table;
}

/** A few laterals of each block, spread from the shortest to the longest. */
function representatives(
  laterals: readonly number[],
  blockOf: (lateral: number) => number,
  count: (lateral: number) => number,
): readonly number[] {
  return [...new Set(laterals.map(blockOf))].flatMap((block) => {
    const own = laterals.filter((lateral) => blockOf(lateral) === block).sort((a, b) => count(a) - count(b));
    const most = Math.min(followed, own.length);
    return Array.from(
      { length: most },
      (_, i) => own[Math.round((i * (own.length - 1)) / Math.max(most - 1, 1))] ?? -1,
    );
  });
}

function lowestEmitter_m({ laterals }: WateringJob, lateral: number): number {
  const own = laterals.height_m.subarray(laterals.offsets[lateral], laterals.offsets[lateral + 1]);
  return own.reduce((least_m, each_m) => Math.min(least_m, each_m), Infinity);
}

function sumOf(numbers: Iterable<number>): number {
  let sum = 0;
  for (const each of numbers) sum += each;
  return sum;
}
