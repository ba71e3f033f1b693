import type { Evenness } from "../drip/watering.ts";
import type { Plan } from "../plan.ts";
import { planePoint } from "../plane/coordinate.ts";
import { known } from "./known.ts";
import { placed } from "./positions.ts";
import { position } from "./rounding.ts";

export type Place = readonly [lon: number, lat: number];

/** Flows of some emitters, and how even they are; shares are null where nothing flows. */
export interface EvennessJson {
  readonly emitters: number;
  readonly dry: number;
  readonly lowest_lph: number | null;
  readonly mean_lph: number | null;
  readonly highest_lph: number | null;
  readonly emission_ratio: number | null;
  readonly statistical_ratio: number | null;
  readonly variation_ratio: number | null;
}

export function evennessJson(evenness: Evenness): EvennessJson {
  const { emitters, dry, lowest_lps, mean_lps, highest_lps } = evenness;
  return {
    emitters,
    dry,
    lowest_lph: known(lowest_lps * 3600),
    mean_lph: known(mean_lps * 3600),
    highest_lph: known(highest_lps * 3600),
    emission_ratio: known(evenness.emission_ratio),
    statistical_ratio: known(evenness.statistical_ratio),
    variation_ratio: known(evenness.variation_ratio),
  };
}

/** Where a point of the route is, with 9 decimals; null without one. */
export function pointPlace(plan: Plan, point: number): Place | null {
  const xy = plan.mainline?.route?.xy;
  const [x, y] = [xy?.[2 * point], xy?.[2 * point + 1]];
  return x === undefined || y === undefined ? null : position(placed(plan, planePoint(x, y)), 9);
}
