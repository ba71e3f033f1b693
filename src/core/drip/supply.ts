import type { SupplyCurve } from "../hydraulics/network.ts";
import type { HeadWork } from "../project/water-settings.ts";
import { type Passed, passHeadWorks } from "./head-works.ts";
import { type SourceLine, sourceHead_m, sourceLine } from "./source-line.ts";
import type { Supply } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Pieces of a bent line: its chords then lie under it by a 16,384th of what is lost over it. */
const pieces = 64;
/** Less is no flow. */
const hair_lps = 1e-6;
/** A piece halved so often is a billionth of itself. */
const halvings = 30;

/**
 * What the source gives to the main line: total heads by flow to the field, what others take meanwhile and what the head works lose taken
 * off; null while the water is not known. Others draw before the head works. Losses: see `headWorkLoss_m`.
 */
export function supplyOf(job: Pick<WateringJob, "water" | "source" | "laterals" | "blocks">): Supply | null {
  const { water, source } = job;
  const line = sourceLine(water);
  if (line === null) return null;
  const others_lps = water.others_lph / 3600;
  const atGauge_m = (flow_lps: number) => sourceHead_m(line, flow_lps + others_lps);
  const passed = (isDirty: boolean) => (flow_lps: number) =>
    passHeadWorks(water.headWorks, atGauge_m(flow_lps), flow_lps, isDirty);
  const most_lps = Math.max(line.most_lps - others_lps, 0);
  const flows_lps = flowsOf(line, others_lps, water.headWorks, most_lps < Infinity ? most_lps : 2 * demandOf_lps(job));
  const curve = (at: (flow_lps: number) => Passed): SupplyCurve => {
    const flows = withKinks(flows_lps, at);
    return {
      flow_lps: Float64Array.from(flows),
      head_m: Float64Array.from(flows, (flow_lps) => source.height_m + at(flow_lps).head_m),
    };
  };
  return {
    atGauge: curve((flow_lps) => ({ head_m: atGauge_m(flow_lps), holding: 0 })),
    dirty: curve(passed(true)),
    clean: curve(passed(false)),
    most_lps,
    least_lps: (water.leastFlow_lph ?? 0) / 3600,
    static_m: source.height_m + line.closed_m,
  };
}

/** All emitters at their nominal flow. */
export function demandOf_lps({ laterals, blocks }: Pick<WateringJob, "laterals" | "blocks">): number {
  let sum_lps = 0;
  laterals.block.forEach((block, i) => {
    const emitters = (laterals.offsets[i + 1] ?? 0) - (laterals.offsets[i] ?? 0);
    sum_lps += emitters * (blocks[block]?.emitter.nominal_lps ?? 0);
  });
  return sum_lps;
}

/** Flows to the field at which the curve is read: the points of the line, and between them where something is bent. */
function flowsOf(
  line: SourceLine,
  others_lps: number,
  headWorks: readonly HeadWork[],
  top_lps: number,
): readonly number[] {
  const known = [
    0,
    ...line.points.map(({ flow_lps }) => flow_lps - others_lps).filter((flow_lps) => flow_lps > hair_lps),
  ];
  const isLossBent = headWorks.some(({ atFlow_lph }) => atFlow_lph !== null && atFlow_lph > 0);
  // Nothing ends a level line: it is followed as far as is asked for.
  if (known.length === 1 && isLossBent && top_lps > 0) known.push(top_lps);
  if (!line.isBent && !isLossBent) return known;
  return known.flatMap((flow_lps, i) => {
    const before_lps = known[i - 1];
    if (before_lps === undefined) return [flow_lps];
    return Array.from({ length: pieces }, (_, n) => before_lps + ((flow_lps - before_lps) * (n + 1)) / pieces);
  });
}

/** Where a regulator no longer holds the curve bends: such a flow is one of its own. */
function withKinks(flows_lps: readonly number[], at: (flow_lps: number) => Passed): readonly number[] {
  return flows_lps.flatMap((flow_lps, i) => {
    const before_lps = flows_lps[i - 1];
    if (before_lps === undefined || at(before_lps).holding === at(flow_lps).holding) return [flow_lps];
    let [held, free] = [before_lps, flow_lps];
    for (let round = 0; round < halvings; round++) {
      const middle = (held + free) / 2;
      if (at(middle).holding === at(before_lps).holding) held = middle;
      else free = middle;
    }
    return held > before_lps ? [held, flow_lps] : [flow_lps];
  });
}
