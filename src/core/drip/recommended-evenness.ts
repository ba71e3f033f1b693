import type { EmitterPlacing } from "../project/water-settings.ts";

/** Emitters nearer to each other than this wet a strip; the ground is steep from the slope on. */
const wideSpacing_m = 4;
const steep_ratio = 0.02;

/**
 * Emission uniformity that published practice recommends to design for, as shares from and to: ASAE EP405.1, from memory (calculation handbook,
 * section 4.6). On-line emitters are point sources, by their spacing along the row; built-in ones a line source; steep or undulating from 2 % on.
 */
export function recommendedEvenness(
  placing: EmitterPlacing,
  plantSpacing_m: number,
  slope_ratio: number,
): readonly [from: number, to: number] {
  const isSteep = Math.abs(slope_ratio) > steep_ratio;
  if (placing === "in-line") return isSteep ? [0.7, 0.85] : [0.8, 0.9];
  if (plantSpacing_m > wideSpacing_m) return isSteep ? [0.85, 0.9] : [0.9, 0.95];
  return isSteep ? [0.8, 0.9] : [0.85, 0.9];
}
