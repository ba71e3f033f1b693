import type { DripSettings } from "../project/water-settings.ts";

/** What joins and adapters of a block's hose have to fit. */
export type HoseSize = Pick<DripSettings, "hoseInside_mm" | "hoseOutside_mm" | "riserInside_mm">;

/** Nominal 1/2 in hose and 3/4 in riser: articles that name no size mean these. Common practice, no source; makers differ. */
export const usualHose: HoseSize = { hoseInside_mm: 15.24, hoseOutside_mm: 17.78, riserInside_mm: 20.574 };

/** What an article of hose has after its name: nothing for the usual hose, else its diameters. */
export function hoseSuffix({ hoseInside_mm, hoseOutside_mm }: HoseSize): string {
  const isUsual = hoseInside_mm === usualHose.hoseInside_mm && hoseOutside_mm === usualHose.hoseOutside_mm;
  return isUsual ? "" : `-${short(hoseInside_mm)}x${short(hoseOutside_mm)}mm`;
}

/** The same of what grips the hose from outside. */
export function clipSuffix({ hoseOutside_mm }: Pick<HoseSize, "hoseOutside_mm">): string {
  return hoseOutside_mm === usualHose.hoseOutside_mm ? "" : `-${short(hoseOutside_mm)}mm`;
}

/** The same of riser pipe. */
export function riserSuffix({ riserInside_mm }: HoseSize): string {
  return riserInside_mm === usualHose.riserInside_mm ? "" : `-${short(riserInside_mm)}mm`;
}

function short(diameter_mm: number): string {
  return String(Number(diameter_mm.toFixed(2)));
}
