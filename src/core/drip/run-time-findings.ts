import { type Finding, listed, quantity, say, unplaced } from "../finding.ts";
import { monthNames } from "./season/months.ts";
import type { BlockSeason, Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** While pipes fill some rows get water and others do not: a run is to last many times as long. Common practice, no source. */
const timesFilling = 10;
const day_h = 24;

/**
 * What the hours say that sets have to run. Findings: drip/hours-too-few, drip/short-runs, drip/recovery-too-slow, drip/stored-too-little; nothing while
 * the season or the sets are not known.
 */
export function runTimeFindings(job: WateringJob, { season, sets }: Watering): readonly Finding[] {
  if (season === null || sets.length === 0) return [];
  return [...hoursTooFew(job, season, sets), ...shortRuns(job, season, sets), ...volumes(job, season)];
}

/** The month in which all sets together take most hours. */
function longestMonth(season: readonly BlockSeason[], of: "usualAll_h" | "all_h") {
  const months = season.flatMap(({ months }) => months);
  return months.reduce((most, month) => (month[of] > most[of] ? month : most));
}

function hoursTooFew({ water }: WateringJob, season: readonly BlockSeason[], sets: readonly WaterSet[]): Finding[] {
  const usual = longestMonth(season, "usualAll_h");
  const peak = longestMonth(season, "all_h");
  const isUsual = usual.usualAll_h > water.hoursADay_h;
  const [month, needed_h] = isUsual ? [usual.month, usual.usualAll_h] : [peak.month, peak.all_h];
  if (needed_h <= water.hoursADay_h) return [];
  return [
    unplaced(
      "drip/hours-too-few",
      isUsual ? "warning" : "note",
      say`In ${monthNames[month - 1] ?? ""} ${sets.length === 1 ? "the set" : `the ${sets.length} sets`} would have to run ${quantity("time", needed_h)} a day${isUsual ? "" : " at the peak share"}; there are ${quantity("time", water.hoursADay_h)}.`,
      isUsual
        ? say`The vines get only a part of what they are to have.`
        : say`What is usually given fits; a year that asks for the peak share does not.`,
      say`Water longer, at night too; else a larger emitter, if the water carries it, or less of the full need.`,
    ),
  ];
}

function shortRuns(job: WateringJob, season: readonly BlockSeason[], sets: readonly WaterSet[]): Finding[] {
  const runs = sets.map((set) => {
    const blocks = new Set(set.laterals.map((lateral) => Number(job.laterals.block[lateral])));
    const run_h = [...blocks].reduce((most, block) => Math.max(most, season[block]?.peak.usual_h ?? 0), 0);
    return { name: set.name, run_h, fill_h: set.fill_h };
  });
  const short = runs.filter(({ run_h, fill_h }) => run_h > 0 && run_h < timesFilling * fill_h);
  const [worst] = [...short].sort((a, b) => a.run_h / a.fill_h - b.run_h / b.fill_h);
  if (worst === undefined) return [];
  const days = Math.ceil((timesFilling * worst.fill_h) / worst.run_h);
  return [
    unplaced(
      "drip/short-runs",
      "note",
      say`Watered every day, set ${listed(short.map(({ name }) => name))} would run ${quantity("time", worst.run_h)} in the month that needs most, and it takes ${quantity("time", worst.fill_h)} to fill its pipes and hoses.`,
      say`While they fill, near vines get water and far ones do not; the shorter the run, the less even it is.`,
      say`Water every ${days} days and ${days} times as long instead.`,
    ),
  ];
}

/** What all blocks take a day in their hardest month, against what comes back and what is stored. */
function volumes({ water }: WateringJob, season: readonly BlockSeason[]): Finding[] {
  const { recovery_lph, stored_l } = water;
  const daily_l = Array.from({ length: 12 }, (_, i) => {
    return season.reduce((sum_l, { months }) => sum_l + (months[i]?.usual_lpd ?? 0), 0);
  });
  const most_l = Math.max(...daily_l);
  const month = monthNames[daily_l.indexOf(most_l)] ?? "";
  if (recovery_lph !== null && most_l > recovery_lph * day_h) {
    return [
      unplaced(
        "drip/recovery-too-slow",
        "warning",
        say`In ${month} the vines take ${quantity("volume", most_l)} a day; in a whole day only ${quantity("volume", recovery_lph * day_h)} comes back.`,
        say`The well or tank is emptied day by day.`,
        say`Give less of the full need, water another source's share, or store water from the wet months.`,
      ),
    ];
  }
  if (stored_l === null) return [];
  const running_h = Math.min(day_h, longestMonth(season, "usualAll_h").usualAll_h);
  const drawn_l = most_l - (recovery_lph ?? 0) * running_h;
  if (drawn_l <= stored_l) return [];
  return [
    unplaced(
      "drip/stored-too-little",
      "warning",
      say`In ${month} a day's watering draws ${quantity("volume", drawn_l)} out of the store beside what comes back meanwhile; it holds ${quantity("volume", stored_l)}.`,
      say`It runs dry before the last set is done; a pump that runs dry is ruined.`,
      say`Spread the sets over day and night so that more comes back between them, or take a larger tank.`,
    ),
  ];
}
