import type { Finding } from "../finding.ts";
import { badSetting } from "./findings.ts";
import { rowNumbers, rowNumbersWanted } from "./row-numbers.ts";
import type { Stated } from "./schema-parts.ts";
import { usualHeadWork } from "./water-defaults.ts";
import type { dripSection, seasonSection, setsSection, waterSection } from "./water-schema.ts";
import type { DripSettings, HeadWork, SeasonSettings, SetPin, SetSettings, WaterSettings } from "./water-settings.ts";

/* What is stated of water, drip and season, over what is usual. */

export function waterSettings(stated: Stated<typeof waterSection>, usual: WaterSettings): WaterSettings {
  return {
    kind: stated.kind ?? usual.kind,
    staticPressure_kpa: stated.staticPressure ?? usual.staticPressure_kpa,
    tests:
      stated.tests?.map(({ volume, time, pressure }) => ({
        volume_l: volume,
        time_h: time,
        pressure_kpa: pressure ?? null,
      })) ?? usual.tests,
    pump: stated.pump?.map(({ flow, pressure }) => ({ flow_lph: flow, pressure_kpa: pressure })) ?? usual.pump,
    leastFlow_lph: stated.leastFlow ?? usual.leastFlow_lph,
    tankLevel_m: stated.tankLevel ?? usual.tankLevel_m,
    limitFlow_lph: stated.limitFlow ?? usual.limitFlow_lph,
    others_lph: stated.others ?? usual.others_lph,
    hoursADay_h: stated.hoursADay ?? usual.hoursADay_h,
    recovery_lph: stated.recovery ?? usual.recovery_lph,
    stored_l: stated.stored ?? usual.stored_l,
    height_m: stated.height ?? usual.height_m,
    margin_ratio: stated.margin ?? usual.margin_ratio,
    headWorks: stated.headWorks?.map(headWork) ?? usual.headWorks,
    closing_h: stated.closing ?? usual.closing_h,
    temperature_c: stated.temperature ?? usual.temperature_c,
  };
}

function headWork(stated: NonNullable<Stated<typeof waterSection>["headWorks"]>[number]): HeadWork {
  const usual = usualHeadWork(stated.kind);
  const loss_kpa = stated.loss ?? Math.min(usual.loss_kpa, stated.dirtyLoss ?? Infinity);
  return {
    kind: stated.kind,
    loss_kpa,
    dirtyLoss_kpa: stated.dirtyLoss ?? (stated.loss === undefined ? usual.dirtyLoss_kpa : loss_kpa),
    atFlow_lph: stated.atFlow ?? usual.atFlow_lph,
    outlet_kpa: stated.kind === "regulator" ? (stated.outlet ?? usual.outlet_kpa) : null,
  };
}

/** A plain emitter without a stated exponent is a turbulent one: x 0.5 (calculation handbook, section 4.1). */
const plainExponent = 0.5;

export function dripSettings(stated: Stated<typeof dripSection>, usual: DripSettings): DripSettings {
  const emitterKind = stated.emitterKind ?? usual.emitterKind;
  return {
    emitterFlow_lph: stated.emitterFlow ?? usual.emitterFlow_lph,
    emittersPerVine: stated.emittersPerVine ?? usual.emittersPerVine,
    emitterPressure_kpa: stated.emitterPressure ?? usual.emitterPressure_kpa,
    emitterKind,
    emitterExponent: stated.emitterExponent ?? (emitterKind === "plain" ? plainExponent : usual.emitterExponent),
    emitterVariation_ratio: stated.emitterVariation ?? usual.emitterVariation_ratio,
    emitterLeast_kpa: stated.emitterLeast ?? usual.emitterLeast_kpa,
    emitterMost_kpa: stated.emitterMost ?? usual.emitterMost_kpa,
    emitterPlacing: stated.emitterPlacing ?? usual.emitterPlacing,
    emitterOffset_m: stated.emitterOffset ?? usual.emitterOffset_m,
    emitterSpacing_m: stated.emitterSpacing ?? usual.emitterSpacing_m,
    barb: stated.barb ?? usual.barb,
    overrun_m: stated.overrun ?? usual.overrun_m,
    slack_ratio: stated.slack ?? usual.slack_ratio,
    hoseInside_mm: stated.hoseInside ?? usual.hoseInside_mm,
    hoseOutside_mm: stated.hoseOutside ?? usual.hoseOutside_mm,
    hoseMost_kpa: stated.hoseMost ?? usual.hoseMost_kpa,
    riserInside_mm: stated.riserInside ?? usual.riserInside_mm,
    friction: stated.friction ?? usual.friction,
    hoseRoughness: stated.hoseRoughness ?? usual.hoseRoughness,
    evenness_ratio: stated.evenness ?? usual.evenness_ratio,
  };
}

/**
 * Sets as stated. A pipe that the trench states by its size is kept, unless sizing is asked for. Findings: `project/bad-setting` for pins whose
 * rows are no numbers.
 */
export function setSettings(
  stated: Stated<typeof setsSection>,
  usual: SetSettings,
  isPipeStated: boolean,
): { readonly sets: SetSettings; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const pins = stated.pins?.flatMap(({ block, rows, set }, i): SetPin[] => {
    const numbers = rowNumbers(rows);
    if (numbers !== null) return [{ block: block ?? null, ...numbers, set }];
    findings.push(badSetting(`sets.pins.${i}.rows`, `"${rows}"`, rowNumbersWanted));
    return [];
  });
  const sets: SetSettings = {
    pattern: stated.pattern ?? usual.pattern,
    count: stated.count ?? usual.count,
    follow: stated.follow ?? usual.follow,
    pins: pins ?? usual.pins,
    regulator_kpa: stated.regulator ?? usual.regulator_kpa,
    control: stated.control ?? usual.control,
    sizing: stated.sizing ?? (isPipeStated ? "as-set" : usual.sizing),
    family: stated.family ?? usual.family,
    mostVelocity_mps: stated.mostVelocity ?? usual.mostVelocity_mps,
    friction: stated.friction ?? usual.friction,
    roughness: stated.roughness ?? usual.roughness,
  };
  return { sets, findings };
}

export function seasonSettings(stated: Stated<typeof seasonSection>, usual: SeasonSettings): SeasonSettings {
  return {
    reference_mmpd: stated.reference ?? usual.reference_mmpd,
    lowest_c: stated.lowest ?? usual.lowest_c,
    highest_c: stated.highest ?? usual.highest_c,
    method: stated.method ?? usual.method,
    rain_mm: stated.rain ?? usual.rain_mm,
    rainShare_ratio: stated.rainShare ?? usual.rainShare_ratio,
    cropStart: stated.cropStart ?? usual.cropStart,
    cropMid: stated.cropMid ?? usual.cropMid,
    cropEnd: stated.cropEnd ?? usual.cropEnd,
    stages: stated.stages ?? usual.stages,
    shaded_ratio: stated.shaded ?? usual.shaded_ratio,
    usualShare_ratio: stated.usualShare ?? usual.usualShare_ratio,
    peakShare_ratio: stated.peakShare ?? usual.peakShare_ratio,
    soil_mmpm: stated.soil ?? usual.soil_mmpm,
    roots_m: stated.roots ?? usual.roots_m,
    depletion_ratio: stated.depletion ?? usual.depletion_ratio,
    young_ratio: stated.young ?? usual.young_ratio,
    leaching_ratio: stated.leaching ?? usual.leaching_ratio,
  };
}
