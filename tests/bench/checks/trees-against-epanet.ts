import type { Network, Solution, SupplyCurve } from "../../../src/core/hydraulics/network.ts";
import { supplyHead_m } from "../../../src/core/hydraulics/read-supply.ts";
import { solveNetwork } from "../../../src/core/hydraulics/solve-network.ts";
import { type Epanet, type EpanetAnswer, epanetAccuracy, epanetTrials } from "../../support/epanet.ts";
import { lossOfPipe_m } from "../../support/loss-of-pipe.ts";
import { randomTree } from "../../support/random-trees.ts";
import type { Verdict } from "./verdict.ts";

/** Heads within a centimetre; outflows within a thousandth, or 0.01 L/h. */
const headTolerance_m = 0.01;
const flowTolerance_ratio = 1e-3;
const flowTolerance_lph = 0.01;
/** EPANET's units are rounded in the sixth place, which shifts heads by some tenths of a millimetre: next to no pressure that is a larger share. */
const unitShift_m = 5e-4;
/** Our own heads against what the pipes lose at our own flows. */
export const residualTolerance_m = 1e-3;

/** What a comparison showed. */
export interface Compared {
  /** EPANET got to its accuracy, so that it can judge. */
  readonly isJudged: boolean;
  readonly worstHead_m: number;
  /** Over what is allowed of each outflow: at most 1. */
  readonly worstFlow: number;
}

/** Heads and outflows of ours beside EPANET's. */
export function compared({ height_m }: Network, ours: Solution, theirs: EpanetAnswer): Compared {
  let worstHead_m = 0;
  let worstFlow = 0;
  for (const [i, head_m] of ours.head_m.entries()) {
    worstHead_m = Math.max(worstHead_m, Math.abs(head_m - (theirs.head_m[i] ?? Number.NaN)));
    const flow_lph = 3600 * (ours.outflow_lps[i] ?? 0);
    const off_lph = Math.abs(flow_lph - 3600 * (theirs.outflow_lps[i] ?? Number.NaN));
    const pressure_m = Math.max(head_m - (height_m[i] ?? 0), unitShift_m);
    const allowed_ratio = Math.max(flowTolerance_ratio, unitShift_m / pressure_m);
    if (i > 0) worstFlow = Math.max(worstFlow, off_lph / Math.max(flowTolerance_lph, allowed_ratio * flow_lph));
  }
  const isJudged = theirs.relativeError <= epanetAccuracy && theirs.trials <= epanetTrials;
  return { isJudged, worstHead_m, worstFlow };
}

/** Faults that a solution shows by itself: not settled, mass lost at a node, heads that the losses do not account for. */
export function ownFaults(network: Network, supply: SupplyCurve, solution: Solution): readonly string[] {
  const faults: string[] = [];
  const { head_m, flow_lps, outflow_lps } = solution;
  if (!solution.isSettled) faults.push(`not settled in ${solution.rounds} rounds`);
  const onward = Float64Array.from(outflow_lps);
  for (const [i, upstream] of network.upstream.entries()) {
    if (upstream >= 0) onward[upstream] = (onward[upstream] ?? 0) + (flow_lps[i] ?? 0);
  }
  const most_lps = Math.max(flow_lps[0] ?? 0, 1e-9);
  for (const [i, flow] of flow_lps.entries()) {
    if (!(Math.abs(flow - (onward[i] ?? 0)) <= 1e-12 * most_lps))
      faults.push(`node ${i}: ${flow} in, ${onward[i]} out`);
    if (!(flow >= 0)) faults.push(`node ${i}: flow ${flow} L/s back`);
  }
  let off_m = Math.abs((head_m[0] ?? 0) - supplyHead_m(supply, flow_lps[0] ?? 0));
  for (const [i, upstream] of network.upstream.entries()) {
    if (upstream < 0) continue;
    const lost_m = lossOfPipe_m(network, i, flow_lps[i] ?? 0);
    off_m = Math.max(off_m, Math.abs((head_m[upstream] ?? 0) - lost_m - (head_m[i] ?? 0)));
  }
  if (!(off_m <= residualTolerance_m)) faults.push(`heads are off what flows lose by ${off_m} m`);
  return faults;
}

/** A random tree by us and by EPANET. `worst` is the head in m between them where EPANET got to its accuracy, else 0. */
export function treeAgainstEpanet(epanet: Epanet, seed: number): Verdict & { readonly isJudged: boolean } {
  const { network, supply, load } = randomTree(seed);
  const ours = solveNetwork(network, supply);
  const faults = [...ownFaults(network, supply, ours)];
  const first = compared(network, ours, epanet.solve(network, supply));
  const isClose = first.worstHead_m <= headTolerance_m && first.worstFlow <= 1;
  // It stops early where emitters are nearly dry; told to go on it often gets stuck, so it is told so only where that matters.
  const { isJudged, worstHead_m, worstFlow } = isClose
    ? first
    : compared(network, ours, epanet.solve(network, supply, true));
  if (isJudged && !(worstHead_m <= headTolerance_m)) faults.push(`heads ${worstHead_m} m from EPANET's`);
  if (isJudged && !(worstFlow <= 1)) faults.push(`an outflow ${worstFlow} times as far from EPANET's as it may be`);
  return {
    faults: faults.map((fault) => `seed ${seed}, load ${load}: ${fault}`),
    worst: isJudged ? worstHead_m : 0,
    isJudged,
  };
}
