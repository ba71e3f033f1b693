import type { DripSettings } from "../project/water-settings.ts";
import { blockOfLateral } from "./lateral-of.ts";
import type { Evenness } from "./watering.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

/**
 * Emission uniformity as a share: (1 - 1.27 · variation / √n) · lowest / mean, with the variation of manufacture and n emitters at a plant. Keller and
 * Karmeli 1974, from memory; calculation handbook, section 4.6.
 */
export function emissionUniformity(lowestToMean: number, variation_ratio: number, perPlant: number): number {
  return Math.max(0, 1 - (1.27 * variation_ratio) / Math.sqrt(perPlant)) * lowestToMean;
}

/**
 * Statistical uniformity as a share: 1 - √(Vq² + CV²) of the variation that pressure makes (x · Vh, or that of the flows themselves) and that of
 * manufacture. Bralts, ASAE EP458, from memory; calculation handbook, section 4.6.
 */
export function statisticalUniformity(flowVariation_ratio: number, variation_ratio: number): number {
  return Math.max(0, 1 - Math.hypot(flowVariation_ratio, variation_ratio));
}

/** Share by which head may vary for flow to vary by a share, both of their highest: 1 - (1 - q)^(1/x). Wu and Gitlin, from memory. */
export function headVariation(flowVariation_ratio: number, exponent: number): number {
  return 1 - (1 - flowVariation_ratio) ** (1 / exponent);
}

/** Emitters that wet one vine; of those built in, as many as there are in a vine spacing. */
export function emittersAtVine(drip: DripSettings, vineSpacing_m: number): number {
  return drip.emitterPlacing === "in-line" ? Math.max(1, vineSpacing_m / drip.emitterSpacing_m) : drip.emittersPerVine;
}

/** A run of emitters of one block: flows from one index to another. */
export interface EmitterRun {
  readonly block: BlockJob;
  readonly from: number;
  readonly to: number;
}

/**
 * Evenness of some laterals of a job, by the flow of every emitter of it. Where emitters of several blocks are mixed their flows are compared as
 * shares of the nominal one, and the variation of manufacture is the greatest. No emitters: even, with no flow.
 */
export function evennessOf(
  job: Pick<WateringJob, "blocks" | "laterals">,
  laterals: Iterable<number>,
  flow_lps: Float64Array,
): Evenness {
  const { offsets } = job.laterals;
  const runs = Array.from(laterals, (lateral) => {
    return { block: blockOfLateral(job, lateral), from: offsets[lateral] ?? 0, to: offsets[lateral + 1] ?? 0 };
  });
  return evennessOfRuns(runs, flow_lps);
}

/** The same of runs of emitters. */
export function evennessOfRuns(runs: readonly EmitterRun[], flow_lps: Float64Array): Evenness {
  let [emitters, dry, sum_lps, sum, squares] = [0, 0, 0, 0, 0];
  let [lowest_lps, highest_lps, lowest, highest] = [Infinity, 0, Infinity, 0];
  // Of manufacture, and what it takes off.
  let [variation_ratio, loss_ratio] = [0, 0];
  for (const { block, from, to } of runs) {
    const { drip, emitter, vineSpacing_m } = block;
    if (to > from) {
      const own = drip.emitterVariation_ratio;
      variation_ratio = Math.max(variation_ratio, own);
      loss_ratio = Math.max(loss_ratio, own / Math.sqrt(emittersAtVine(drip, vineSpacing_m)));
    }
    const scale = emitter.nominal_lps > 0 ? 1 / emitter.nominal_lps : 0;
    for (let i = from; i < to; i++) {
      const flow = flow_lps[i] ?? 0;
      const share = flow * scale;
      sum_lps += flow;
      sum += share;
      squares += share * share;
      if (flow <= 0 && scale > 0) dry++;
      if (flow < lowest_lps) lowest_lps = flow;
      if (flow > highest_lps) highest_lps = flow;
      if (share < lowest) lowest = share;
      if (share > highest) highest = share;
    }
    emitters += to - from;
  }
  if (emitters === 0) return none;
  const mean = sum / emitters;
  // Rounding may bring it below nothing where all flows are equal.
  const spread = Math.sqrt(Math.max(0, squares / emitters - mean * mean));
  return {
    emitters,
    lowest_lps,
    mean_lps: sum_lps / emitters,
    highest_lps,
    emission_ratio: mean > 0 ? emissionUniformity(lowest / mean, loss_ratio, 1) : 0,
    statistical_ratio: mean > 0 ? statisticalUniformity(spread / mean, variation_ratio) : 0,
    variation_ratio: highest > 0 ? (highest - lowest) / highest : 0,
    dry,
  };
}

const none: Evenness = {
  emitters: 0,
  lowest_lps: 0,
  mean_lps: 0,
  highest_lps: 0,
  emission_ratio: 1,
  statistical_ratio: 1,
  variation_ratio: 0,
  dry: 0,
};
