import type { Monthly, SeasonSettings } from "../../project/water-settings.ts";
import type { BlockSeason, SeasonMonth } from "../watering.ts";
import type { WateringJob } from "../watering-job.ts";
import { type BlockBasis, blockBases, type SeasonWatering } from "./block-basis.ts";
import { cropCurve, meanCoefficient } from "./crop-curve.ts";
import { monthDays, ofMonth } from "./months.ts";
import { gross, net_l } from "./need.ts";
import { referenceEvapotranspiration } from "./reference-evapotranspiration.ts";
import { type GivenMonth, type GivenSeason, givenBySoil, type SoilMonth } from "./soil-store.ts";

/** Water given in a month, a day of a block: mm made litres, with the hours of one set, not yet those of all. */
type Months = readonly Omit<SeasonMonth, "all_h" | "usualAll_h">[];

/**
 * Water of every block through the year, in the order of the blocks; null while evapotranspiration is not known. Full need is reference
 * evapotranspiration by crop coefficient (FAO-56 eq. 58); soil and rain go first; what is let out is more by evenness and leaching.
 */
export function seasonOf(job: WateringJob, watering: SeasonWatering): readonly BlockSeason[] | null {
  const reference_mmpd = referenceEvapotranspiration(job.season, job.source);
  if (reference_mmpd === null) return null;
  const given = givenSeason(job.season, reference_mmpd);
  const blocks = blockBases(job, watering).map((basis, i) => monthsOf(job, i, basis, reference_mmpd, given));
  return blocks.map((own): BlockSeason => {
    const months = own.map((month, m) => ({
      ...month,
      usualAll_h: allSets_h(job, watering, (block) => blocks[block]?.[m]?.usual_h ?? 0) ?? month.usual_h,
      all_h: allSets_h(job, watering, (block) => blocks[block]?.[m]?.peak_h ?? 0) ?? month.peak_h,
    }));
    const over = (of: (month: SeasonMonth) => number) =>
      months.reduce((sum, month, i) => sum + of(month) * ofMonth(monthDays, i + 1), 0);
    return {
      months,
      peak: peakOf(months),
      firstWatering: given.firstWatering === null ? null : inYear(given.firstWatering),
      usual_l: over(({ usual_lpd }) => usual_lpd),
      full_l: over(({ peak_lpd }) => peak_lpd),
    };
  });
}

/** What has to be given in mm, from the month of bud break on for a year. */
export function givenSeason(season: SeasonSettings, reference_mmpd: Monthly): GivenSeason {
  const curve = cropCurve(season);
  const [budBreak, , , leafFall] = curve.months;
  const months = Array.from({ length: 12 }, (_, i): SoilMonth => {
    const begins = Math.floor(budBreak) + i;
    const month = Math.floor(inYear(begins));
    const [from, to] = [Math.max(begins, budBreak), Math.min(begins + 1, leafFall)];
    const isInLeaf = to > from;
    return {
      month,
      from,
      to: isInLeaf ? to : from,
      need_mm: meanCoefficient(curve, begins, begins + 1) * ofMonth(reference_mmpd, month) * ofMonth(monthDays, month),
      rain_mm: season.rain_mm === null ? 0 : season.rainShare_ratio * ofMonth(season.rain_mm, month),
    };
  });
  return givenBySoil(months, season.soil_mmpm * season.roots_m * season.depletion_ratio, {
    usual: season.usualShare_ratio,
    peak: season.peakShare_ratio,
    young: season.young_ratio,
  });
}

function monthsOf(
  { blocks, season }: WateringJob,
  block: number,
  { vines, vineFlow_lph, evenness_ratio }: BlockBasis,
  reference_mmpd: Monthly,
  given: GivenSeason,
): Months {
  const { rowSpacing_m = 0, vineSpacing_m = 0 } = blocks[block] ?? {};
  const curve = cropCurve(season);
  return monthDays.map((days, i) => {
    const month = i + 1;
    const of = given.months.find((each) => each.month === month);
    const daily_l = (which: (each: GivenMonth) => number) =>
      of === undefined
        ? 0
        : gross(net_l(which(of) / days, rowSpacing_m, vineSpacing_m), evenness_ratio, season.leaching_ratio);
    const usual_l = daily_l(({ usual_mm }) => usual_mm);
    const peak_l = daily_l(({ peak_mm }) => peak_mm);
    const begins = month < Math.floor(curve.months[0]) ? month + 12 : month;
    return {
      month,
      reference_mmpd: ofMonth(reference_mmpd, month),
      crop: meanCoefficient(curve, begins, begins + 1),
      usual_lpw: 7 * usual_l,
      peak_lpw: 7 * peak_l,
      young_lpw: 7 * daily_l(({ young_mm }) => young_mm),
      usual_h: vineFlow_lph > 0 ? usual_l / vineFlow_lph : 0,
      peak_h: vineFlow_lph > 0 ? peak_l / vineFlow_lph : 0,
      usual_lpd: usual_l * vines,
      peak_lpd: peak_l * vines,
    };
  });
}

/** Hours a day of all sets one after another, each as long as its block that needs longest; null without sets. */
function allSets_h({ laterals }: WateringJob, { sets }: SeasonWatering, of: (block: number) => number): number | null {
  if (sets.length === 0) return null;
  return sets.reduce(
    (sum_h, set) =>
      sum_h + set.laterals.reduce((most_h, lateral) => Math.max(most_h, of(laterals.block[lateral] ?? -1)), 0),
    0,
  );
}

/** The month that needs most; where none needs anything, the one in which grass gives off most. */
function peakOf(months: readonly SeasonMonth[]): SeasonMonth {
  const isMore = (one: SeasonMonth, other: SeasonMonth) =>
    one.peak_lpw === other.peak_lpw ? one.reference_mmpd > other.reference_mmpd : one.peak_lpw > other.peak_lpw;
  const [first, ...others] = months;
  if (first === undefined) throw new Error("a year has twelve months");
  return others.reduce((most, month) => (isMore(month, most) ? month : most), first);
}

/** A moment of the year after as one of the year, from 1 to 13. */
function inYear(month: number): number {
  return month < 13 ? month : inYear(month - 12);
}
