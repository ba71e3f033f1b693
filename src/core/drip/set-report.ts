import { supplyHead_m } from "../hydraulics/read-supply.ts";
import type { Delivery } from "./deliver.ts";
import { legBefore } from "./line-segments.ts";
import type { RunningSet } from "./run-sets.ts";
import type { SetTree } from "./set-lines.ts";
import type { Evenness, SetNodes, Supply, WaterSet } from "./watering.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** What there is to say of a set that runs. `ofLeg`: index of the plan's pipe of each leg. */
export function setReport(
  job: WateringJob,
  line: LineJob,
  supply: Supply,
  delivery: Delivery,
  set: number,
  running: RunningSet,
  ofLeg: readonly number[],
  told: { readonly evenness: Evenness; readonly flushable: number },
): WaterSet {
  const tree = delivery.lines.trees[set];
  const spare = delivery.spare[set];
  const laterals = delivery.sets[set];
  if (tree === undefined || spare === undefined || laterals === undefined) throw new Error(`there is no set ${set}`);
  const { solution } = running;
  const flow_lps = Number(solution.flow_lps[0]);
  return {
    name: String(set + 1),
    laterals,
    flow_lps,
    gauge_m: supplyHead_m(supply.atGauge, flow_lps),
    source_m: Number(solution.head_m[0]),
    spare_m: spare.head_m,
    sparest: spare.lateral,
    evenness: told.evenness,
    nodes: nodesOf(line, delivery, tree, running, ofLeg),
    fill_h: flow_lps > 0 ? contents_l(job, line, delivery, tree, laterals) / (flow_lps * 3600) : Infinity,
    flushable: told.flushable,
    isSettled: solution.isSettled,
  };
}

function nodesOf(
  line: LineJob,
  { segments, pipes }: Delivery,
  tree: SetTree,
  { solution }: RunningSet,
  ofLeg: readonly number[],
): SetNodes {
  const station_m = new Float64Array(tree.point.length);
  tree.upstream.forEach((up, node) => {
    if (up < 0) return;
    const own_m = Number(tree.leg[node]) < 0 ? 0 : Number(line.length_m[Number(tree.point[node])]);
    station_m[node] = Number(station_m[up]) + own_m;
  });
  const legs = tree.point.map((_, node) => legBefore(tree, node));
  return {
    upstream: Int32Array.from(tree.upstream),
    point: Int32Array.from(tree.point),
    pipe: Int32Array.from(legs, (leg) => (leg < 0 ? -1 : Number(ofLeg[leg]))),
    lateral: Int32Array.from(tree.lateral),
    station_m,
    height_m: Float64Array.from(tree.point, (point) => Number(line.height_m[point])),
    head_m: solution.head_m,
    flow_lps: solution.flow_lps,
    velocity_mps: Float64Array.from(legs, (leg, node) => {
      const inside_mm = leg < 0 ? 0 : (pipes[Number(segments.of[leg])]?.inside_mm ?? 0);
      return inside_mm > 0 ? (Number(solution.flow_lps[node]) * 1000) / area_mm2(inside_mm) : 0;
    }),
  };
}

/** What its pipes, risers and hoses hold. */
function contents_l(
  { laterals, blocks }: WateringJob,
  line: LineJob,
  { segments, pipes }: Delivery,
  tree: SetTree,
  own: readonly number[],
): number {
  const inPipes = tree.leg.reduce((sum, leg, node) => {
    if (leg < 0) return sum;
    return (
      sum + area_mm2(pipes[Number(segments.of[leg])]?.inside_mm ?? 0) * Number(line.length_m[Number(tree.point[node])])
    );
  }, 0);
  const inRows = own.reduce((sum, lateral) => {
    const drip = blocks[Number(laterals.block[lateral])]?.drip;
    if (drip === undefined) return sum;
    const hose = area_mm2(drip.hoseInside_mm) * Number(laterals.hose_m[lateral]);
    return sum + hose + area_mm2(drip.riserInside_mm) * Number(laterals.riser_m[lateral]);
  }, 0);
  return (inPipes + inRows) / 1000;
}

function area_mm2(inside_mm: number): number {
  return (Math.PI / 4) * inside_mm ** 2;
}
