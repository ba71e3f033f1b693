import type { SeasonMonth, Watering } from "../../core/drip/watering.ts";
import { pressureOf_kpa } from "../../core/hydraulics/pressure-head.ts";

/** What is shown of all sets together. */
export interface WholeWatering {
  readonly most_lph: number;
  /** The least that a set has to spare, kPa; below 0 it is short. */
  readonly spare_kpa: number;
  readonly dry: number;
  /** The least even block: emission uniformity as a share. */
  readonly evenness_ratio: number;
  /** The month in which all sets together run longest; null while the season is not known. */
  readonly peak: SeasonMonth | null;
}

/** L/s as the L/h that people are shown. */
export function lphOf(flow_lps: number): number {
  return flow_lps * 3600;
}

/** The sets in a few numbers; null without sets. */
export function wholeWatering({ sets, blocks, season }: Watering): WholeWatering | null {
  if (sets.length === 0) return null;
  const watered = blocks.flatMap((block) => block ?? []);
  return {
    most_lph: lphOf(Math.max(...sets.map(({ flow_lps }) => flow_lps))),
    spare_kpa: pressureOf_kpa(Math.min(...sets.map(({ spare_m }) => spare_m))),
    dry: watered.reduce((sum, { dry }) => sum + dry, 0),
    evenness_ratio: Math.min(...watered.map(({ emission_ratio }) => emission_ratio)),
    peak: (season ?? [])
      .flatMap(({ months }) => months)
      .reduce<SeasonMonth | null>((most, month) => (most === null || month.all_h > most.all_h ? month : most), null),
  };
}

/** Index of the block that gets its water least evenly. */
export function leastEven({ blocks }: Watering): number {
  return blocks.reduce(
    (least, block, b) =>
      block !== null && block.emission_ratio < (blocks[least]?.emission_ratio ?? Infinity) ? b : least,
    0,
  );
}
