import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { RowSide } from "../../core/sheets/row-side.ts";

/** The whole row in the width there is, or lengths and heights to one scale. */
export type SideZoom = "whole" | 50 | 20;

export interface SideScale {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly width: number;
  readonly height: number;
  /** Where the ground is drawn. */
  readonly ground: number;
  /** How many times heights are drawn larger than lengths. */
  readonly raised: number;
}

/** A CSS pixel is 1/96 inch. */
const pixelsPerMetre = 96 / 0.0254;
const pad = { left: 24, right: 32, over: 26, under: 58 } as const;
/** Height of the highest wire over the ground when the whole row is shown, pixels. */
const wholeHeight_px = 92;
const narrowest_px = 200;

/** Scales of the drawing of a row's side, for a room so many pixels wide. */
export function sideScale({ length_m, top_m }: RowSide, zoom: SideZoom, room_px: number): SideScale {
  const inside = Math.max(narrowest_px, room_px) - pad.left - pad.right;
  const along = zoom === "whole" ? inside / length_m : pixelsPerMetre / zoom;
  const up = zoom === "whole" ? wholeHeight_px / top_m : along;
  const ground = pad.over + up * top_m;
  return {
    x: scaleLinear([0, length_m], [pad.left, pad.left + along * length_m]),
    y: scaleLinear([0, top_m], [ground, pad.over]),
    width: pad.left + along * length_m + pad.right,
    height: ground + pad.under,
    ground,
    raised: up / along,
  };
}
