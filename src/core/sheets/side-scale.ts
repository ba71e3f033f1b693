import type { RowSide } from "./row-side.ts";
import { anchorDrawn_m } from "./side-ends.ts";

/** The whole row in the width there is, or lengths and heights to one scale. */
export type SideZoom = "whole" | 50 | 20;

/** Where things of a row's side are on the drawing, in pixels of 1/96 inch. */
export interface SideScale {
  readonly x: (station_m: number) => number;
  /** Of a height over the lowest ground that is drawn. */
  readonly y: (height_m: number) => number;
  readonly width: number;
  readonly height: number;
  /** Under the deepest post: where distances are written from. */
  readonly under: number;
  /** How many times heights are drawn larger than lengths. */
  readonly raised: number;
}

const pixelsPerMetre = 96 / 0.0254;
const pad = { left: 20, right: 26, over: 20, under: 84 } as const;
/** Height of the tallest post over the ground when the whole row is shown, and most of everything over and under ground. */
const post_px = 84;
const most_px = 300;
const narrowest_px = 200;

/** Scales of the drawing of a row's side, for a width of so many pixels when the whole row is shown. */
export function sideScale(side: RowSide, zoom: SideZoom, width_px: number): SideScale {
  const { top_m, deepest_m, ground } = side;
  // An anchor goes on outward under the ground.
  const more_m = side.ends.some(({ tie }) => tie !== null) ? anchorDrawn_m : 0;
  const [from_m, to_m] = [side.from_m - more_m, side.to_m + more_m];
  const inside = Math.max(narrowest_px, width_px) - pad.left - pad.right;
  const relief_m = ground.points.reduce((most, { height_m }) => Math.max(most, height_m), 0);
  const along = zoom === "whole" ? inside / (to_m - from_m) : pixelsPerMetre / zoom;
  const fitting = Math.min(post_px / top_m, most_px / (top_m + deepest_m + relief_m));
  const up = zoom === "whole" ? Math.max(along, fitting) : along;
  const level = pad.over + up * (top_m + relief_m);
  return {
    x: (station_m) => pad.left + along * (station_m - from_m),
    y: (height_m) => level - up * height_m,
    width: pad.left + along * (to_m - from_m) + pad.right,
    height: level + up * deepest_m + pad.under,
    under: level + up * deepest_m,
    raised: up / along,
  };
}
