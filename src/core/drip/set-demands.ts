import type { Network, Solution } from "../hydraulics/network.ts";
import type { LateralCurve } from "../hydraulics/outlet.ts";
import { solveNetwork } from "../hydraulics/solve-network.ts";
import { type LateralFlow, lateralFlows, readLateralFlow } from "./followed-laterals.ts";
import { setLines } from "./set-lines.ts";
import { setNetwork } from "./set-network.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What a set would take by total head where the main line begins, as parallel arrays. */
export interface SetDemand {
  readonly flow_lps: Float64Array;
  readonly head_m: Float64Array;
}

const heads = 12;
const mostRounds = 12;
/** Share of its flow by which a lateral may be off. */
const near_ratio = 3e-4;

/**
 * The demand of every set, from no pressure to the highest there is: its pipes solved at one head after the other, laterals as single outlets, each
 * with its own flow where the set runs (see `lateralFlows`). Right there; beside it near enough to be drawn.
 */
export function setDemands(job: WateringJob, watering: Watering): readonly SetDemand[] {
  const { sets, pipes, supply } = watering;
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
    const none: LateralCurve = { kind: "lateral", lowest_m: -1, highest_m: 1, coefficients: [0] };
    const network = setNetwork(
      job,
      line,
      tree,
      (leg) => inside_mm.get(leg) ?? job.pipe.inside_mm,
      () => none,
    );
    const flows = lateralFlows(job, watering, set, supply.static_m);
    const byNode = tree.lateral.map((lateral) => flows.get(lateral) ?? null);
    // Spaced by the root of the head, for flow grows with that; the head at which the set runs among them.
    const head_m = Float64Array.from([
      ...Array.from({ length: heads }, (_, i) => {
        return source.height_m + (supply.static_m - source.height_m) * ((i + 1) / heads) ** 2;
      }),
      set.source_m,
    ]).sort();
    let last: Solution | undefined;
    const flow_lps = head_m.map((each_m) => {
      last = solvedAt(network, byNode, each_m, last);
      return last.flow_lps[0] ?? 0;
    });
    return { flow_lps, head_m };
  });
}

/** The network at a head, with every lateral straight about the head it gets, until that gives the flow it has there. */
function solvedAt(
  network: Network,
  byNode: readonly (LateralFlow | null)[],
  at_m: number,
  start: Solution | undefined,
): Solution {
  const supply = { flow_lps: Float64Array.of(0), head_m: Float64Array.of(at_m) };
  let solution = start;
  for (let round = 1; ; round++) {
    const outlets = [...network.outlets];
    byNode.forEach((flow, node) => {
      if (flow !== null) outlets[network.outlet[node] ?? -1] = straight(flow, solution?.head_m[node] ?? at_m);
    });
    solution = solveNetwork({ ...network, outlets }, supply, solution);
    const { head_m, outflow_lps } = solution;
    const isNear = byNode.every((flow, node) => {
      if (flow === null) return true;
      const own = readLateralFlow(flow, head_m[node] ?? at_m).flow_lps;
      return Math.abs(own - (outflow_lps[node] ?? 0)) <= near_ratio * own;
    });
    if (isNear || round === mostRounds) return solution;
  }
}

function straight(flow: LateralFlow, inlet_m: number): LateralCurve {
  const { flow_lps, growth } = readLateralFlow(flow, inlet_m);
  return { kind: "lateral", lowest_m: inlet_m - 1, highest_m: inlet_m + 1, coefficients: [flow_lps, growth] };
}
