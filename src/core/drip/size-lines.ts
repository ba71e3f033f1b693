import { lawCodes } from "../hydraulics/friction-law.ts";
import type { Load } from "../hydraulics/loads-job.ts";
import { type LoadsSizing, sizeForLoads } from "../hydraulics/size-for-loads.ts";
import { waterViscosity_m2ps } from "../hydraulics/viscosity.ts";
import type { ValvePattern } from "../project/water-settings.ts";
import type { LineSegments } from "./line-segments.ts";
import { legBefore } from "./line-segments.ts";
import type { SetLines, SetTree } from "./set-lines.ts";
import { kpa_pm, pipeRoughness } from "./set-network.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** What sizes are to be found for. */
export interface LineSizingJob {
  readonly job: WateringJob;
  readonly pattern: ValvePattern;
  readonly line: LineJob;
  readonly lines: SetLines;
  readonly segments: LineSegments;
  /** Of every lateral. */
  readonly flow_lps: readonly number[];
  readonly wanted_m: readonly number[];
  /** Total head where the main line begins, by set while it runs. */
  readonly source_m: readonly number[];
  /** Index of the smallest size each segment may have; null: any. */
  readonly least: Uint8Array | null;
  /** How finely the sizer weighs heads; undefined: as it does by itself. */
  readonly fineness: readonly number[] | undefined;
}

/** Of the pressure behind a regulator, what pipes may take of it where rows want all of it and more. */
const regulatedLoss_ratio = 0.1;

/**
 * The cheapest sizes with which every row gets its head while its set runs, under the velocity cap, as the index of each
 * segment's size; the widest where that is not enough. With regulators at set valves first the pipes
 * behind them, from the head that those let through, then the main line to what these need.
 */
export function sizeLines(task: LineSizingJob): Uint8Array {
  const { job, pattern, lines, segments } = task;
  const loads = lines.trees.map((tree, set) => loadOf(task, tree, task.source_m[set] ?? 0));
  const all = segments.upstream.map((_, i) => i);
  if (job.sets.regulator_kpa === null || pattern === "cock-a-row") {
    return sizeSome(task, all, loads).size;
  }
  const regulated_m = job.sets.regulator_kpa / kpa_pm;
  const held = loads.map(({ source_m, ...load }, set): Load => {
    const height_m = Number(task.line.height_m[lines.trees[set]?.valve ?? 0]);
    const most_m = height_m + regulated_m;
    return {
      ...load,
      // What a regulator holds back no pipe brings: sizes are those for what there can be.
      wanted_m: load.wanted_m.map((wanted_m) => Math.min(wanted_m, most_m - regulated_m * regulatedLoss_ratio)),
      source_m: pattern === "valves-at-source" ? Math.min(source_m, most_m) : most_m,
    };
  });
  const isOwn = (i: number) => segments.line[i] !== 0;
  const own = all.filter(isOwn);
  const behind = sizeSome(task, own, held);
  const main = all.filter((i) => !isOwn(i));
  const before = sizeSome(
    task,
    main,
    loads.map((load, set) => ({
      ...load,
      wanted_m: withValve(task, lines.trees[set], load.wanted_m, held[set], behind.head_m[set], own),
    })),
  );
  const size = new Uint8Array(all.length);
  for (const [i, segment] of own.entries()) size[segment] = Number(behind.size[i]);
  for (const [i, segment] of main.entries()) size[segment] = Number(before.size[i]);
  return size;
}

/** Flow and wanted head of one set, by segment. */
function loadOf({ segments, flow_lps, wanted_m }: LineSizingJob, tree: SetTree, source_m: number): Load {
  const flows = new Float64Array(segments.upstream.length);
  const wanted = new Float64Array(segments.upstream.length).fill(-Infinity);
  const legFlow_lps = new Map<number, number>();
  tree.lateral.forEach((lateral, node) => {
    if (lateral < 0) return;
    const leg = legBefore(tree, node);
    if (leg < 0) return;
    legFlow_lps.set(leg, (legFlow_lps.get(leg) ?? 0) + (flow_lps[lateral] ?? 0));
    const segment = Number(segments.of[leg]);
    wanted[segment] = Math.max(Number(wanted[segment]), wanted_m[lateral] ?? 0);
  });
  for (const [leg, flow] of legFlow_lps)
    flows[Number(segments.of[leg])] = Number(flows[Number(segments.of[leg])]) + flow;
  for (let i = flows.length - 1; i >= 0; i--) {
    const up = Number(segments.upstream[i]);
    if (up >= 0) flows[up] = Number(flows[up]) + Number(flows[i]);
  }
  return { flow_lps: flows, wanted_m: wanted, source_m };
}

/** Sizes of some of the segments as a wood of their own: what goes on from none of them begins at the source. */
function sizeSome(
  { job: { sizes, sets, water }, segments, least, fineness }: LineSizingJob,
  some: readonly number[],
  loads: readonly Load[],
): LoadsSizing {
  const place = new Map(some.map((segment, i) => [segment, i]));
  const taken = (of: Float64Array) => Float64Array.from(some, (segment) => Number(of[segment]));
  return sizeForLoads(
    {
      upstream: Int32Array.from(some, (segment) => place.get(Number(segments.upstream[segment])) ?? -1),
      length_m: Float64Array.from(some, (segment) => Number(segments.length_m[segment])),
      sizes,
      least: least === null ? null : Uint8Array.from(some, (segment) => Number(least[segment])),
      law: lawCodes[sets.friction],
      roughness: pipeRoughness(sets),
      viscosity_m2ps: waterViscosity_m2ps(water.temperature_c),
      mostVelocity_mps: sets.mostVelocity_mps,
      isTapering: true,
      loads: loads.map(({ flow_lps, wanted_m, source_m }) => ({
        flow_lps: taken(flow_lps),
        wanted_m: taken(wanted_m),
        source_m,
      })),
    },
    fineness,
  );
}

/** What the rows of a set want of the main line, and what its own pipes need where they leave it. */
function withValve(
  { segments }: LineSizingJob,
  tree: SetTree | undefined,
  wanted_m: Float64Array,
  held: Load | undefined,
  head_m: Float64Array | undefined,
  own: readonly number[],
): Float64Array {
  const all_m = Float64Array.from(wanted_m);
  if (tree === undefined || held === undefined || head_m === undefined) return all_m;
  const spare_m = own.reduce(
    (least_m, segment, i) =>
      Math.min(least_m, Number.isNaN(head_m[i]) ? Infinity : Number(head_m[i]) - Number(wanted_m[segment])),
    Infinity,
  );
  const node = tree.point.indexOf(tree.valve);
  const leg = tree.leg[node] ?? -1;
  if (leg < 0 || spare_m === Infinity) return all_m;
  const segment = Number(segments.of[leg]);
  all_m[segment] = Math.max(Number(all_m[segment]), held.source_m - spare_m);
  return all_m;
}
