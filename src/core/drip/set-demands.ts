import { condenseLateral } from "../hydraulics/condense-lateral.ts";
import { solveNetwork } from "../hydraulics/solve-network.ts";
import { lateralOf } from "./lateral-of.ts";
import { setLines } from "./set-lines.ts";
import { setNetwork } from "./set-network.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What a set would take by total head where the main line begins, as parallel arrays. */
export interface SetDemand {
  readonly flow_lps: Float64Array;
  readonly head_m: Float64Array;
}

const heads = 14;
const degree = 10;

/**
 * The demand of every set, from no pressure to the highest there is: its pipes solved at one head after the other, laterals as single outlets
 * (see `condenseLateral`).
 */
export function setDemands(job: WateringJob, { sets, pipes, supply }: Watering): readonly SetDemand[] {
  const { line, source } = job;
  if (line === null || supply === null || sets.length === 0) return [];
  const laterals = sets.map((set) => set.laterals);
  const { trees } = setLines(job, line, laterals, job.sets.pattern, job.sets.regulator_kpa !== null);
  return sets.map((set, s): SetDemand => {
    const tree = trees[s];
    if (tree === undefined) throw new Error(`set ${set.name} has no pipes`);
    const inside_mm = new Map<number, number>();
    tree.leg.forEach((leg, node) => {
      const pipe = pipes[set.nodes.pipe[node] ?? -1];
      if (leg >= 0 && pipe !== undefined) inside_mm.set(leg, pipe.pipe.inside_mm);
    });
    const network = setNetwork(
      job,
      line,
      tree,
      (leg) => inside_mm.get(leg) ?? job.pipe.inside_mm,
      (lateral) => {
        const own = lateralOf(job, lateral);
        const lowest_m = own.height_m.reduce((least_m, each) => Math.min(least_m, each), Infinity);
        return condenseLateral(own, lowest_m + 0.5, Math.max(lowest_m + 1, supply.static_m), degree);
      },
    );
    // Spaced by the root of the head, for flow grows with that.
    const head_m = Float64Array.from({ length: heads }, (_, i) => {
      return source.height_m + (supply.static_m - source.height_m) * ((i + 1) / heads) ** 2;
    });
    const flow_lps = head_m.map((each_m) => {
      const solution = solveNetwork(network, { flow_lps: Float64Array.of(0), head_m: Float64Array.of(each_m) });
      return solution.flow_lps[0] ?? 0;
    });
    return { flow_lps, head_m };
  });
}
