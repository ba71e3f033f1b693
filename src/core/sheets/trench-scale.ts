import type { TrenchProfile } from "./trench-profile.ts";

/** The whole branch in the width there is, or lengths to a scale. */
export type TrenchZoom = "whole" | 500 | 200;
/** How many times heights are drawn larger than lengths. */
export const trenchRaises = [1, 5, 10] as const;
export type TrenchRaise = (typeof trenchRaises)[number];

/** Where things of a trench's profile are on the drawing, in pixels of 1/96 inch. */
export interface TrenchScale {
  readonly x: (station_m: number) => number;
  /** The station under a place of the drawing, held to the branch. */
  readonly stationAt: (x: number) => number;
  readonly y: (height_m: number) => number;
  readonly width: number;
  /** Where rows' numbers end, over the highest ground, and where the numbers begin under the lowest bottom. */
  readonly rowsFoot: number;
  readonly under: number;
  readonly raised: TrenchRaise;
  /** Lengths are drawn so many times smaller. */
  readonly ratio: number;
}

const pixelsPerMetre = 96 / 0.0254;
const pad = { left: 16, right: 30 } as const;
/** Lines for what is met, over the rows' numbers; room for signs between those and the ground, and under the bottom for low points. */
export const metLines_px = [14, 30] as const;
const signs_px = 22;
const lowsHeight_px = 46;
/** Of a letter of a row's number, which stands upright. */
const letter_px = 7.4;
const narrowest_px = 200;
/** Without a choice heights are drawn as large as fits into this, the trench no deeper than that; chosen ones never higher than the last. */
const usual_px = 260;
const usualDeep_px = 120;
const most_px = 1400;

/** Scales of the profile's drawing for a width of so many pixels; heights raised as chosen, or as fits. */
export function trenchScale(
  { length_m, lowest_m, highest_m, deepest_m, marks }: TrenchProfile,
  zoom: TrenchZoom,
  raised: TrenchRaise | null,
  width_px: number,
): TrenchScale {
  const inside = Math.max(narrowest_px, width_px) - pad.left - pad.right;
  const along = zoom === "whole" ? inside / Math.max(length_m, 0.1) : pixelsPerMetre / zoom;
  const tall_m = highest_m - lowest_m;
  const fits = (times: TrenchRaise) =>
    raised === null
      ? times * along * tall_m <= usual_px && times * along * deepest_m <= usualDeep_px
      : times * along * tall_m <= most_px;
  const times = [...trenchRaises].reverse().find((each) => each <= (raised ?? 10) && fits(each)) ?? 1;
  const up = along * times;
  const longest = marks.reduce((most, mark) => (mark.kind === "tee" ? Math.max(most, mark.row.length) : most), 0);
  const rowsFoot = metLines_px[1] + 6 + longest * letter_px;
  const ground = rowsFoot + signs_px;
  return {
    x: (station_m) => pad.left + along * station_m,
    stationAt: (x) => Math.min(length_m, Math.max(0, (x - pad.left) / along)),
    y: (height_m) => ground + up * (highest_m - height_m),
    width: pad.left + along * length_m + pad.right,
    rowsFoot,
    under: ground + up * tall_m + lowsHeight_px,
    raised: times,
    ratio: pixelsPerMetre / along,
  };
}
