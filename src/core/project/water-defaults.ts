import type { UnitSystem } from "../units.ts";
import { si } from "./si.ts";
import type {
  DripSettings,
  HeadWork,
  HeadWorkKind,
  SeasonSettings,
  SetSettings,
  WaterSettings,
} from "./water-settings.ts";

/* Common practice, no source, unless a line says otherwise; round numbers of each unit system. */

/** What each part of the head works usually loses, clean and due for cleaning, kPa. Makers' charts count more. */
const usualLosses_kpa: Readonly<Record<HeadWorkKind, readonly [clean: number, dirty: number]>> = {
  "isolating-valve": [2, 2],
  "backflow-device": [35, 35],
  "check-valve": [5, 5],
  // Clean 2 to 3 m, dirty 5 to 7 m of water (calculation handbook, section 4.8).
  filter: [25, 60],
  regulator: [20, 20],
  gauge: [0, 0],
  "flow-meter": [15, 15],
  "air-vent": [0, 0],
  "injector-port": [0, 0],
};

/** A part of the head works with what is usual of its kind. */
export function usualHeadWork(kind: HeadWorkKind): HeadWork {
  const [loss_kpa, dirtyLoss_kpa] = usualLosses_kpa[kind];
  return {
    kind,
    loss_kpa,
    dirtyLoss_kpa,
    atFlow_lph: null,
    outlet_kpa: kind === "regulator" ? si("pressure", "2 bar") : null,
  };
}

/** In the order water meets them: no regulator and no injector unless they are asked for. */
const usualHeadWorks: readonly HeadWork[] = (
  ["isolating-valve", "backflow-device", "check-valve", "gauge", "filter", "gauge", "flow-meter", "air-vent"] as const
).map(usualHeadWork);

export function usualWater(units: UnitSystem): WaterSettings {
  return {
    kind: "unknown",
    staticPressure_kpa: null,
    tests: [],
    pump: [],
    leastFlow_lph: null,
    tankLevel_m: null,
    limitFlow_lph: null,
    others_lph: 0,
    hoursADay_h: 12,
    recovery_lph: null,
    stored_l: null,
    height_m: null,
    margin_ratio: 0.2,
    headWorks: usualHeadWorks,
    closing_h: si("time", "2 s"),
    temperature_c: si("temperature", units === "us" ? "68 F" : "20 C"),
  };
}

export function usualDrip(units: UnitSystem): DripSettings {
  const isUs = units === "us";
  return {
    emitterFlow_lph: si("flow", "0.5 gal/h"),
    emittersPerVine: 1,
    emitterPressure_kpa: si("pressure", isUs ? "15 psi" : "1 bar"),
    emitterKind: "compensating",
    emitterExponent: 0,
    // The border of excellent and average of ASAE EP405.1, from memory.
    emitterVariation_ratio: 0.05,
    emitterLeast_kpa: si("pressure", isUs ? "10 psi" : "0.7 bar"),
    emitterMost_kpa: si("pressure", isUs ? "50 psi" : "3.5 bar"),
    emitterPlacing: "on-line",
    emitterOffset_m: 0.1,
    emitterSpacing_m: si("length", isUs ? "24 in" : "0.6 m"),
    barb: "standard",
    overrun_m: si("length", "2 ft"),
    // Polyethylene shrinks by 0.54 % over 30 K (calculation handbook, section 0.1).
    slack_ratio: 0.01,
    // Trade name 1/2 in, .600 x .700 in (calculation handbook, section 5.4).
    hoseInside_mm: 15.24,
    hoseOutside_mm: 17.78,
    hoseMost_kpa: si("pressure", isUs ? "50 psi" : "3.5 bar"),
    riserInside_mm: 20.574,
    friction: "darcy-weisbach",
    // C of hose of 14 to 15 mm by Howell et al. 1981, from memory.
    hoseRoughness: 130,
    evenness_ratio: 0.9,
  };
}

export function usualSets(units: UnitSystem): SetSettings {
  return {
    pattern: "valve-a-set",
    count: null,
    follow: "rows",
    pins: [],
    regulator_kpa: null,
    control: "hand",
    sizing: "chosen",
    family: units === "us" ? "pvc-40" : "pvc-pn10",
    // 5 ft/s in closed plastic mains (a PVC pipe maker's engineering data; calculation handbook, section 4.8).
    mostVelocity_mps: 1.5,
    friction: "hazen-williams",
    roughness: 150,
  };
}

export const usualSeason: SeasonSettings = {
  reference_mmpd: null,
  lowest_c: null,
  highest_c: null,
  method: "penman-monteith",
  rain_mm: null,
  rainShare_ratio: 0.75,
  // Wine grapes, FAO-56 table 12 (calculation handbook, section 6.2).
  cropStart: 0.3,
  cropMid: 0.7,
  cropEnd: 0.45,
  stages: [4, 6, 8.5, 11],
  shaded_ratio: null,
  usualShare_ratio: 0.5,
  peakShare_ratio: 1,
  // Loam holds about 150 mm in a metre for roots.
  soil_mmpm: 150,
  roots_m: 0.9,
  depletion_ratio: 0.5,
  young_ratio: 0.3,
  leaching_ratio: 0,
};
