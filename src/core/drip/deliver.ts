import type { Network, Solution, SupplyCurve } from "../hydraulics/network.ts";
import type { LateralCurve } from "../hydraulics/outlet.ts";
import { supplyHead_m } from "../hydraulics/read-supply.ts";
import { solveNetwork } from "../hydraulics/solve-network.ts";
import type { ValvePattern } from "../project/water-settings.ts";
import { type LineSegments, lineSegments } from "./line-segments.ts";
import { type SetLines, type SetTree, setLines } from "./set-lines.ts";
import { setNetwork } from "./set-network.ts";
import type { Sets } from "./sets.ts";
import { sizeLines } from "./size-lines.ts";
import type { LateralNeed } from "./watering.ts";
import type { LineJob, PricedSize, WateringJob } from "./watering-job.ts";

/** What every way to feed the rows is worked out from. */
export interface DeliveryJob {
  readonly job: WateringJob;
  readonly line: LineJob;
  /** With the share taken off that is not counted on. */
  readonly counted: SupplyCurve;
  readonly needs: readonly LateralNeed[];
  /** Laterals as single outlets. */
  readonly curves: readonly LateralCurve[];
}

/** Pipes for some sets by one pattern of valves, and how much head is left over with them. */
export interface Delivery {
  readonly pattern: ValvePattern;
  readonly sets: Sets;
  readonly lines: SetLines;
  readonly segments: LineSegments;
  /** By segment. */
  readonly pipes: readonly PricedSize[];
  readonly networks: readonly Network[];
  /** By set, from the supply that is counted on. */
  readonly solutions: readonly Solution[];
  /** By set: least head to spare at a tee, and the lateral there. */
  readonly spare: readonly { readonly head_m: number; readonly lateral: number }[];
  readonly cost: number;
  /** A row does not get its head. */
  readonly isShort: boolean;
}

const mostRounds = 4;
/** Head that a row may lack without being called short. */
const hardly_m = 0.005;

/** What stays the same from round to round. */
interface Setting {
  readonly of: DeliveryJob;
  readonly sets: Sets;
  readonly pattern: ValvePattern;
  readonly lines: SetLines;
  readonly segments: LineSegments;
  readonly wanted_m: readonly number[];
  readonly fineness: readonly number[] | undefined;
}

/** Flow of each lateral, and total head where the main line begins by set. */
interface Flowing {
  readonly flow_lps: readonly number[];
  readonly source_m: readonly number[];
}

/**
 * The pipes by which some sets get their water by one pattern of valves: sized for the flows that rows need, solved with them, and sized again, never
 * smaller, for the flows that come of it while a row is short; at most four times. `fineness`: as of `sizeForLoads`.
 */
export function deliver(of: DeliveryJob, sets: Sets, pattern: ValvePattern, fineness?: readonly number[]): Delivery {
  const { job, line, counted, needs } = of;
  const lines = setLines(job, line, sets, pattern, job.sets.regulator_kpa !== null);
  const wanted_m = needs.map(({ inlet_m }) => inlet_m);
  const setting = { of, sets, pattern, lines, segments: lineSegments(lines, line), wanted_m, fineness };
  const first_lps = needs.map(({ flow_lps }) => flow_lps);
  const source_m = sets.map((set) =>
    supplyHead_m(
      counted,
      set.reduce((sum, lateral) => sum + (first_lps[lateral] ?? 0), 0),
    ),
  );
  let last = sizedAndSolved(setting, { flow_lps: first_lps, source_m }, null);
  for (let round = 2; round <= mostRounds && last.delivery.isShort && last.size !== null; round++) {
    const next = sizedAndSolved(setting, flowingIn(last.delivery, first_lps), last.size);
    const isSame = next.size?.every((size, i) => size === last.size?.[i]) === true;
    last = next;
    if (isSame) break;
  }
  return last.delivery;
}

function sizedAndSolved(
  setting: Setting,
  flowing: Flowing,
  least: Uint8Array | null,
): { readonly delivery: Delivery; readonly size: Uint8Array | null } {
  const { of, sets, pattern, lines, segments, wanted_m, fineness } = setting;
  const { job, line, counted, curves } = of;
  const isChosen = job.sets.sizing === "chosen" && job.sizes.length > 0;
  const size = isChosen
    ? sizeLines({ ...flowing, job, pattern, line, lines, segments, wanted_m, least, fineness })
    : null;
  const pipes = pipesOf(job, segments, size);
  const networks = lines.trees.map((tree) =>
    setNetwork(
      job,
      line,
      tree,
      (leg) => pipes[Number(segments.of[leg])]?.inside_mm ?? job.pipe.inside_mm,
      (lateral) => curveOf(curves, lateral),
    ),
  );
  const solutions = networks.map((network) => solveNetwork(network, counted));
  const spare = lines.trees.map((tree, set) => spareOf(tree, solutions[set], wanted_m));
  const cost = segments.length_m.reduce((sum, length_m, i) => sum + length_m * (pipes[i]?.cost_pm ?? 0), 0);
  const isShort = spare.some(({ head_m }) => head_m < -hardly_m);
  return { delivery: { pattern, sets, lines, segments, pipes, networks, solutions, spare, cost, isShort }, size };
}

/** Flows as they came out, for the next round. */
function flowingIn({ lines, solutions }: Delivery, first_lps: readonly number[]): Flowing {
  const flow_lps = [...first_lps];
  lines.trees.forEach((tree, set) => {
    tree.lateral.forEach((lateral, node) => {
      if (lateral >= 0) flow_lps[lateral] = Number(solutions[set]?.outflow_lps[node]);
    });
  });
  return { flow_lps, source_m: solutions.map(({ head_m }) => Number(head_m[0])) };
}

function pipesOf(job: WateringJob, segments: LineSegments, size: Uint8Array | null): readonly PricedSize[] {
  const known = job.sizes.find(({ size }) => size === job.pipe.size);
  const asSet: PricedSize = { ...job.pipe, cost_pm: known?.cost_pm ?? 0, rating_kpa: known?.rating_kpa ?? Number.NaN };
  return segments.upstream.map((_, i) => (size === null ? asSet : (job.sizes[Number(size[i])] ?? asSet)));
}

function curveOf(curves: readonly LateralCurve[], lateral: number): LateralCurve {
  const curve = curves[lateral];
  if (curve === undefined) throw new Error(`lateral ${lateral} is in a set but not in the job`);
  return curve;
}

function spareOf(tree: SetTree, solution: Solution | undefined, wanted_m: readonly number[]) {
  let [head_m, at] = [Infinity, -1];
  tree.lateral.forEach((lateral, node) => {
    if (lateral < 0) return;
    const spare_m = Number(solution?.head_m[node]) - (wanted_m[lateral] ?? 0);
    if (spare_m < head_m) [head_m, at] = [spare_m, lateral];
  });
  return { head_m, lateral: at };
}
