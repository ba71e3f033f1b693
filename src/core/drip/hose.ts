import type { DripSettings } from "../project/water-settings.ts";
import type { Row, Rows } from "../rows/rows.ts";

/* Used by the first picture of a page: nothing of hydraulics is to be imported here. */

/**
 * Hose of a row, m along the ground: from the end post at the water end to the farthest vine, the overrun past it, and slack for the cold; 0 for a
 * row without vines.
 */
export function hoseLength_m(
  rows: Rows,
  row: Row,
  index: number,
  waterEnd: "start" | "end",
  { overrun_m, slack_ratio }: DripSettings,
): number {
  return row.vines === 0 ? 0 : (farthestVine_m(rows, row, index, waterEnd) + overrun_m) * (1 + slack_ratio);
}

/** From the end post at the water end to the vine farthest from it, along the ground. */
function farthestVine_m(rows: Rows, row: Row, index: number, waterEnd: "start" | "end"): number {
  const first = rows.vines.station_m[rows.vines.offsets[index] ?? 0] ?? 0;
  const last = rows.vines.station_m[(rows.vines.offsets[index + 1] ?? 0) - 1] ?? 0;
  const level_m = waterEnd === "start" ? last : row.length_m - first;
  return level_m * (row.groundLength_m / row.length_m);
}

/** Emitters that are built into a hose, the first half a spacing from where it begins. */
export function builtIn(hose_m: number, spacing_m: number): number {
  return Math.max(0, Math.floor(hose_m / spacing_m + 0.5));
}

/** Emitters of a row: so many a vine, or those built into its hose. */
export function emittersOf(
  vines: number,
  hose_m: number,
  { emitterPlacing, emittersPerVine, emitterSpacing_m }: DripSettings,
): number {
  return emitterPlacing === "in-line" ? builtIn(hose_m, emitterSpacing_m) : vines * emittersPerVine;
}
