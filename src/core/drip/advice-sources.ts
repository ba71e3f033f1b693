import { quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Json } from "../project/project.ts";
import type { PumpPoint, WaterSettings } from "../project/water-settings.ts";
import { type Change, setsNamed, withWater } from "./advice-changes.ts";
import type { AdviceNumbers } from "./advice-numbers.ts";
import { headWorkLoss_m } from "./head-works.ts";
import { seasonOf } from "./season/season-of.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What a pump has to give, at the gauge. */
interface Duty {
  readonly flow_lph: number;
  readonly pressure_kpa: number;
}

/** How much water a day there is, and how much is wanted. */
interface Volumes {
  /** What the source gives by the hour the whole day through; null: not known. */
  readonly source_lph: number | null;
  /** In the month that needs most; null while the season is not known. */
  readonly day_l: number | null;
  readonly running_h: number;
}

/** Sets are not all of one size, and a pump wears. Common practice, no source. */
const reserve = 1.1;
/** Head for friction in the pipes beside that of the worst lateral, first and when that is too little. */
const friction_m = [4, 10, 20] as const;

/**
 * A pump of the size that the rows need, run in as many sets as the hours allow; where the source gives less by the hour than that, with a tank
 * that the source fills all day. None where even a whole day of the source is too little, or the source's flow is not known.
 */
export function tankOrPump(job: WateringJob, watering: Watering, before: AdviceNumbers): readonly Change[] {
  const needs = reached(job, watering.laterals);
  // What is starved now says nothing of what it takes: nominal flows and the evenness that is asked for.
  const season = seasonOf(job, { blocks: [], sets: [] });
  const sets = setsInHours(job, watering.sets, season, before);
  // A pump pushes no more through an emitter than it is made for: where pressure is enough, it is there to run fewer sets.
  if (before.missing.head_m === 0 && before.sets <= sets.count) return [];
  const flow_lph = roundUp(
    ((needs.reduce((sum_lps, need) => sum_lps + need.flow_lps, 0) * 3600) / sets.count) * reserve,
  );
  const volumes = volumesOf(job, watering.supply, season, sets.hours_h * sets.count);
  const { source_lph, day_l } = volumes;
  const stored_l = tank_l(volumes);
  const isFed = source_lph === null || flow_lph <= source_lph || (day_l !== null && stored_l === 0);
  const isFilled = !isFed && day_l !== null && day_l <= 24 * source_lph;
  if (!isFed && !isFilled) return [];
  return friction_m.map((lost_m) => {
    const duty = dutyOf(job, needs, flow_lph, lost_m);
    return isFed ? pump(job, duty, sets.count) : tankAndPump(job, duty, sets.count, stored_l, source_lph);
  });
}

/** As many sets as can run one after another in the hours there are; where the season is not known as many as there are. */
function setsInHours(
  job: WateringJob,
  sets: Watering["sets"],
  season: Watering["season"],
  before: AdviceNumbers,
): { readonly count: number; readonly hours_h: number } {
  const hours_h = season?.reduce((most_h, { peak }) => Math.max(most_h, peak.peak_h), 0) ?? 0;
  const wanted = job.sets.count ?? (hours_h > 0 ? Math.floor(before.hoursADay_h / hours_h) : sets.length);
  return { count: Math.min(Math.max(1, wanted), Math.max(1, job.laterals.row.length)), hours_h };
}

function volumesOf(
  { water }: WateringJob,
  supply: Watering["supply"],
  season: Watering["season"],
  running_h: number,
): Volumes {
  const most_lph = supply === null || !Number.isFinite(supply.most_lps) ? null : supply.most_lps * 3600;
  // A pump in a well gives what its curve says, not what the well does.
  const given_lph = water.kind === "pump" || water.kind === "tank" ? null : most_lph;
  return {
    source_lph: water.recovery_lph ?? given_lph,
    day_l: season === null ? null : season.reduce((sum_l, { peak }) => sum_l + peak.peak_lpd, 0),
    running_h,
  };
}

/** The laterals that a trench gets to. */
function reached({ laterals }: WateringJob, needs: Watering["laterals"]): Watering["laterals"] {
  return needs.filter((_, i) => (laterals.point[i] ?? -1) >= 0);
}

/** What a tank has to hold beside what runs in while the sets run. */
function tank_l({ source_lph, day_l, running_h }: Volumes): number {
  return roundUp(Math.max(0, (day_l ?? 0) - (source_lph ?? 0) * Math.min(24, running_h)));
}

function dutyOf({ water, source }: WateringJob, needs: Watering["laterals"], flow_lph: number, lost_m: number): Duty {
  const wanted_m = needs.reduce((most_m, { inlet_m }) => Math.max(most_m, inlet_m), -Infinity) - source.height_m;
  const lost = water.headWorks.reduce((sum_m, work) => sum_m + headWorkLoss_m(work, flow_lph / 3600, true), 0);
  return {
    flow_lph,
    pressure_kpa: Math.ceil(pressureOf_kpa(wanted_m + lost + lost_m) / 10) * 10,
  };
}

function pump(job: WateringJob, duty: Duty, sets: number): Change {
  const { edits, water } = pumpSettings(job.water, duty, {});
  return {
    id: "pump",
    name: (_, after) =>
      say`A pump that gives ${quantity("flow", duty.flow_lph)} at ${quantity("pressure", duty.pressure_kpa)}, for ${setsNamed(after.sets)}`,
    edits,
    note: say`For ${setsNamed(sets)} in turn, and if the source gives so much. Ask whoever gives the water whether a pump may draw from it; pump and wiring are for licensed hands.`,
    job: withWater(job, water),
  };
}

function tankAndPump(job: WateringJob, duty: Duty, sets: number, stored_l: number, source_lph: number | null): Change {
  const { edits, water } = pumpSettings(job.water, duty, { stored_l, recovery_lph: source_lph, limitFlow_lph: null });
  return {
    id: "tank-and-pump",
    name: (_, after) =>
      say`A tank of ${quantity("volume", stored_l)} that fills all day, and a pump that gives ${quantity("flow", duty.flow_lph)} at ${quantity("pressure", duty.pressure_kpa)}, for ${setsNamed(after.sets)}`,
    edits,
    note: say`For ${setsNamed(sets)} in turn; the source fills the tank with ${quantity("flow", source_lph ?? 0)}. The inlet of the tank needs an air gap or what your authority asks for; pump and wiring are for licensed hands.`,
    job: withWater(job, water),
  };
}

/** Settings of the water with a pump of that duty in its middle: what does not go with a pump is taken out. */
function pumpSettings(
  now: WaterSettings,
  { flow_lph, pressure_kpa }: Duty,
  more: Pick<Partial<WaterSettings>, "stored_l" | "recovery_lph" | "limitFlow_lph">,
): { readonly edits: Change["edits"]; readonly water: Partial<WaterSettings> } {
  const counted_lph = flow_lph / (1 - now.margin_ratio) + now.others_lph;
  const points: readonly PumpPoint[] = [
    { flow_lph: 0, pressure_kpa: Math.round(1.3 * pressure_kpa) },
    { flow_lph: Math.ceil(counted_lph), pressure_kpa },
    { flow_lph: Math.ceil(1.4 * counted_lph), pressure_kpa: Math.round(0.7 * pressure_kpa) },
  ];
  const { stored_l, recovery_lph, limitFlow_lph } = more;
  const edits: (readonly [string, Json])[] = [
    ["water.kind", "pump"],
    ["water.pump", points.map((point) => ({ flow: point.flow_lph, pressure: point.pressure_kpa }))],
    ["water.staticPressure", null],
    ["water.leastFlow", null],
  ];
  if (stored_l !== undefined) edits.push(["water.stored", stored_l]);
  if (recovery_lph !== undefined) edits.push(["water.recovery", recovery_lph]);
  if (limitFlow_lph !== undefined) edits.push(["water.limitFlow", limitFlow_lph]);
  return {
    edits,
    water: { kind: "pump", pump: points, staticPressure_kpa: null, leastFlow_lph: null, ...more },
  };
}

/** To two figures, never below. */
function roundUp(value: number): number {
  if (value <= 0) return 0;
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.ceil(value / step - 1e-9) * step;
}
