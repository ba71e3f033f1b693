import type { WaterSet } from "../../src/core/drip/watering.ts";

const none = new Float64Array();
const nobody = new Int32Array();

/** A set without pipes whose emitters all give 1.9 L/h in the mean: what is worked out from sets takes from it what it needs. */
export function createWaterSet(change: Partial<WaterSet> = {}): WaterSet {
  return {
    name: "1",
    laterals: [],
    flow_lps: 0.02,
    gauge_m: 15,
    source_m: 15,
    spare_m: 1,
    sparest: 0,
    evenness: {
      emitters: 80,
      lowest_lps: 1.7 / 3600,
      mean_lps: 1.9 / 3600,
      highest_lps: 2.1 / 3600,
      emission_ratio: 0.8,
      statistical_ratio: 0.85,
      variation_ratio: 0.19,
      dry: 0,
    },
    nodes: {
      upstream: nobody,
      point: nobody,
      pipe: nobody,
      lateral: nobody,
      station_m: none,
      height_m: none,
      head_m: none,
      flow_lps: none,
      velocity_mps: none,
    },
    fill_h: 0.05,
    flushable: 1,
    isSettled: true,
    ...change,
  };
}
