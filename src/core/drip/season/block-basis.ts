import type { Watering } from "../watering.ts";
import type { BlockJob, WateringJob } from "../watering-job.ts";

/** What of a watering the season depends on. */
export type SeasonWatering = Pick<Watering, "blocks" | "sets">;

/** What the season of a block is reckoned with. */
export interface BlockBasis {
  readonly vines: number;
  /** Of all its emitters at one vine, in the mean. */
  readonly vineFlow_lph: number;
  /** Emission uniformity: as its sets give it, else as it is asked for. */
  readonly evenness_ratio: number;
  /** Sets give the two above; else they are nominal. */
  readonly isWatered: boolean;
}

/** Below this nobody waters by the driest quarter of vines; also the least evenness that can be asked for. */
const leastEvenness_ratio = 0.3;

/** Vines, flow and evenness of every block, in their order. */
export function blockBases(job: WateringJob, { blocks }: SeasonWatering): readonly BlockBasis[] {
  const vines = job.blocks.map(() => 0);
  const emitters = job.blocks.map(() => 0);
  job.laterals.block.forEach((block, lateral) => {
    vines[block] = (vines[block] ?? 0) + (job.laterals.vines[lateral] ?? 0);
    const count = (job.laterals.offsets[lateral + 1] ?? 0) - (job.laterals.offsets[lateral] ?? 0);
    emitters[block] = (emitters[block] ?? 0) + count;
  });
  return job.blocks.map((block, i) => basis(block, vines[i] ?? 0, emitters[i] ?? 0, blocks[i] ?? null));
}

function basis(
  { emitter, drip }: BlockJob,
  vines: number,
  emitters: number,
  evenness: Watering["blocks"][number],
): BlockBasis {
  const each_lps = evenness?.mean_lps ?? emitter.nominal_lps;
  return {
    vines,
    vineFlow_lph: vines === 0 ? 0 : (each_lps * 3600 * emitters) / vines,
    evenness_ratio: Math.max(leastEvenness_ratio, evenness?.emission_ratio ?? drip.evenness_ratio),
    isWatered: evenness !== null,
  };
}
