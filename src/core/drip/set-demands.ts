import { condenseLateral } from "../hydraulics/condense-lateral.ts";
import { lateralFlow_lps } from "../hydraulics/lateral-curve.ts";
import type { LateralCurve } from "../hydraulics/outlet.ts";
import { solveNetwork } from "../hydraulics/solve-network.ts";
import { lateralOf } from "./lateral-of.ts";
import { setLines } from "./set-lines.ts";
import { setNetwork } from "./set-network.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What a set would take by total head where the main line begins, as parallel arrays. */
export interface SetDemand {
  readonly flow_lps: Float64Array;
  readonly head_m: Float64Array;
}

const heads = 12;
const degree = 8;
/** So many laterals of a set are followed; the others are taken to be like the one of these that is most like them. */
const followed = 4;

/**
 * The demand of every set, from no pressure to the highest there is: its pipes solved at one head after the other, laterals as single outlets
 * (see `condenseLateral`), each with its own flow where the set runs. Right there; beside it near enough to be drawn.
 */
export function setDemands(job: WateringJob, watering: Watering): readonly SetDemand[] {
  const { sets, pipes, supply } = watering;
  const { line, source } = job;
  if (line === null || supply === null || sets.length === 0) return [];
  const laterals = sets.map((set) => set.laterals);
  const { trees } = setLines(job, line, laterals, job.sets.pattern, job.sets.regulator_kpa !== null);
  // Spaced by the root of the head, for flow grows with that.
  const head_m = Float64Array.from({ length: heads }, (_, i) => {
    return source.height_m + (supply.static_m - source.height_m) * ((i + 1) / heads) ** 2;
  });
  return sets.map((set, s): SetDemand => {
    const tree = trees[s];
    if (tree === undefined) throw new Error(`set ${set.name} has no pipes`);
    const inside_mm = new Map<number, number>();
    tree.leg.forEach((leg, node) => {
      const pipe = pipes[set.nodes.pipe[node] ?? -1];
      if (leg >= 0 && pipe !== undefined) inside_mm.set(leg, pipe.pipe.inside_mm);
    });
    const curves = lateralCurves(job, watering, set, supply.static_m);
    const network = setNetwork(
      job,
      line,
      tree,
      (leg) => inside_mm.get(leg) ?? job.pipe.inside_mm,
      (lateral) => {
        const curve = curves.get(lateral);
        if (curve === undefined) throw new Error(`lateral ${lateral} is not of set ${set.name}`);
        return curve;
      },
    );
    let last: ReturnType<typeof solveNetwork> | undefined;
    const flow_lps = head_m.map((each_m) => {
      last = solveNetwork(network, { flow_lps: Float64Array.of(0), head_m: Float64Array.of(each_m) }, last);
      return last.flow_lps[0] ?? 0;
    });
    return { flow_lps, head_m };
  });
}

interface Followed {
  readonly lateral: number;
  readonly curve: LateralCurve;
}

/** Every lateral of a set as one outlet: the followed one most like it, moved to its height and scaled to what it takes while the set runs. */
function lateralCurves(
  job: WateringJob,
  { emitters }: Watering,
  { laterals, nodes }: WaterSet,
  highest_m: number,
): ReadonlyMap<number, LateralCurve> {
  const { block, offsets } = job.laterals;
  const count = (lateral: number) => (offsets[lateral + 1] ?? 0) - (offsets[lateral] ?? 0);
  const foot_m = (lateral: number) => lowestEmitter_m(job, lateral);
  const byBlock = new Map<number, Followed[]>();
  for (const lateral of representatives(laterals, (each) => block[each] ?? 0, count)) {
    const lowest_m = foot_m(lateral);
    const curve = condenseLateral(lateralOf(job, lateral), lowest_m + 0.5, Math.max(lowest_m + 1, highest_m), degree);
    const own = byBlock.get(block[lateral] ?? 0) ?? [];
    own.push({ lateral, curve });
    byBlock.set(block[lateral] ?? 0, own);
  }
  const inlets = new Map([...nodes.lateral].map((lateral, node) => [lateral, nodes.head_m[node] ?? 0]));
  const curves = new Map<number, LateralCurve>();
  for (const lateral of laterals) {
    const [like] = [...(byBlock.get(block[lateral] ?? 0) ?? [])].sort(
      (a, b) => Math.abs(count(a.lateral) - count(lateral)) - Math.abs(count(b.lateral) - count(lateral)),
    );
    if (like === undefined) throw new Error(`no lateral of the block of lateral ${lateral} is followed`);
    const up_m = foot_m(lateral) - foot_m(like.lateral);
    const moved = { ...like.curve, lowest_m: like.curve.lowest_m + up_m, highest_m: like.curve.highest_m + up_m };
    const takes_lps = sumOf(emitters?.flow_lps.subarray(offsets[lateral], offsets[lateral + 1]) ?? []);
    const read_lps = lateralFlow_lps(moved, inlets.get(lateral) ?? 0);
    const scale = takes_lps > 0 && read_lps > 0 ? takes_lps / read_lps : count(lateral) / count(like.lateral);
    curves.set(lateral, { ...moved, coefficients: moved.coefficients.map((each) => each * scale) });
  }
  return curves;
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
