import { type Account, account, accountInWords, commonPractice, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import { type BlockBasis, blockBases, type SeasonWatering } from "./season/block-basis.ts";
import { monthDays, monthNames, ofMonth } from "./season/months.ts";
import { gross } from "./season/need.ts";
import { referenceEvapotranspiration } from "./season/reference-evapotranspiration.ts";
import { givenSeason } from "./season/season-of.ts";
import type { GivenMonth } from "./season/soil-store.ts";
import type { BlockSeason, SeasonMonth } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What is given: the usual share of the full need, the share at peak, or what young vines need. */
export type SeasonShare = "usual" | "peak" | "young";

const shareNames: Readonly<Record<SeasonShare, string>> = {
  usual: "Given of the full need, usually",
  peak: "Given of the full need, at peak",
  young: "Need of young vines beside that of grown ones",
};

const shares = { usual: "usualShare_ratio", peak: "peakShare_ratio", young: "young_ratio" } as const;

/** How the litres came about that one vine of a block gets in a week of a month (1 to 12). */
export function vineWeekAccount(
  job: WateringJob,
  watering: SeasonWatering,
  block: number,
  month: number,
  of: SeasonShare,
): Account {
  const { season, blocks } = job;
  const given = givenMonth(job, month);
  const { evenness_ratio, isWatered } = basisOf(job, watering, block);
  const { rowSpacing_m = 0, vineSpacing_m = 0 } = blocks[block] ?? {};
  return account(
    {
      formula:
        of === "young"
          ? say`Share of the full need less rain, over the ground of one vine, over evenness and what does not run through, over the days of ${name(month)} times seven. Soil is not counted on, for young roots are not deep.`
          : say`Share of the full need less rain, for the part of ${name(month)} in which the soil's store is used up, over the ground of one vine, over evenness and what does not run through, over the days of the month times seven.`,
      inputs: [
        input("Full need of the month", "depth", given.need_mm),
        input(shareNames[of], "ratio", season[shares[of]]),
        input("Rain that reaches the roots", "depth", given.rain_mm),
        input("Part of the time in leaf that is watered", "ratio", of === "young" ? 1 : given.watered_ratio),
        input("From row to row", "length", rowSpacing_m),
        input("From vine to vine", "length", vineSpacing_m),
        input(isWatered ? "Evenness" : "Evenness that is asked for", "ratio", evenness_ratio),
        input("To wash salt out", "ratio", season.leaching_ratio),
        input("Days", "count", ofMonth(monthDays, month)),
      ],
      source:
        "FAO-56, eq. 58; a millimetre on a square metre is a litre; gross need by evenness and leaching from memory",
    },
    (need_mm = 0, share = 0, rain_mm = 0, watered = 0, row_m = 0, vine_m = 0, even = 1, leaching = 0, days = 1) =>
      (gross(watered * Math.max(0, share * need_mm - rain_mm) * row_m * vine_m, even, leaching) / days) * 7,
  );
}

/** How the full need of a month came about, mm. */
export function fullNeedAccount(job: WateringJob, { reference_mmpd, crop, month }: SeasonMonth): Account {
  return account(
    {
      formula: say`What grass would give off in a day by the coefficient of vines and the days of ${name(month)}.`,
      inputs: [
        input("Reference evapotranspiration a day", "depth", reference_mmpd),
        input("Crop coefficient, mean of the month", "count", crop),
        input("Days", "count", ofMonth(monthDays, month)),
        ...(job.season.shaded_ratio === null
          ? []
          : [remark("In full leaf", "from the ground shaded at noon, Williams and Ayars 2005, from memory")]),
      ],
      source: "FAO-56, eq. 58",
    },
    (reference = 0, crop_ratio = 0, days = 0) => reference * crop_ratio * days,
  );
}

/** How the hours a day came about that one set of a block runs. */
export function setHoursAccount(
  job: WateringJob,
  watering: SeasonWatering,
  block: number,
  { usual_lpw, peak_lpw }: SeasonMonth,
  of: Exclude<SeasonShare, "young">,
): Account {
  const { vineFlow_lph, isWatered } = basisOf(job, watering, block);
  return account(
    {
      formula: say`Water of one vine in a week, over seven days and what its emitters give in an hour.`,
      inputs: [
        input("A vine in a week", "volume", of === "usual" ? usual_lpw : peak_lpw),
        input(isWatered ? "Flow at one vine, mean of the block" : "Flow at one vine, nominal", "flow", vineFlow_lph),
      ],
      source: "volume over flow",
    },
    (week_l = 0, flow_lph = 0) => (flow_lph > 0 ? week_l / 7 / flow_lph : 0),
  );
}

/** How the hours a day of all sets one after another came about, in a month (1 to 12). */
export function allHoursAccount(
  { laterals }: WateringJob,
  { sets }: SeasonWatering,
  seasons: readonly BlockSeason[],
  month: number,
  of: Exclude<SeasonShare, "young">,
): Account {
  const hours_h = (block: number) => {
    const { usual_h = 0, peak_h = 0 } = seasons[block]?.months[month - 1] ?? {};
    return of === "usual" ? usual_h : peak_h;
  };
  const longest_h = sets.map((set) =>
    set.laterals.reduce((most_h, lateral) => Math.max(most_h, hours_h(laterals.block[lateral] ?? -1)), 0),
  );
  return account(
    {
      formula: say`Sets added up, each as long as that of its blocks that needs longest.`,
      inputs: [inputs("Hours a day of a set", "time", longest_h)],
      source: commonPractice,
    },
    (sum_h = 0) => sum_h,
  );
}

/** How the litres came about that a block gets in a day of a month. */
export function blockDayAccount(
  job: WateringJob,
  watering: SeasonWatering,
  block: number,
  { usual_lpw, peak_lpw }: SeasonMonth,
  of: Exclude<SeasonShare, "young">,
): Account {
  return account(
    {
      formula: say`Water of one vine in a week over seven days, by the vines.`,
      inputs: [
        input("A vine in a week", "volume", of === "usual" ? usual_lpw : peak_lpw),
        input("Vines", "count", basisOf(job, watering, block).vines),
      ],
      source: "counted",
    },
    (week_l = 0, vines = 0) => (week_l / 7) * vines,
  );
}

/** How the litres of a year came about. */
export function yearAccount({ months }: BlockSeason, of: Exclude<SeasonShare, "young">): Account {
  return account(
    {
      formula: say`Litres of a day by the days of each month, added up.`,
      inputs: [
        inputs(
          "Months",
          "volume",
          months.flatMap((month) => {
            const volume_l = (of === "usual" ? month.usual_lpd : month.peak_lpd) * ofMonth(monthDays, month.month);
            return volume_l > 0 ? [volume_l] : [];
          }),
        ),
      ],
      source: "counted",
    },
    (sum_l = 0) => sum_l,
  );
}

/** How the first watering came about, in months with parts from 1. */
export function firstWateringAccount(job: WateringJob): Account {
  const { season } = job;
  const reference_mmpd = referenceEvapotranspiration(season, job.source);
  const given = reference_mmpd === null ? null : givenSeason(season, reference_mmpd);
  const held = [
    input("The soil holds in a metre", "depth", season.soil_mmpm),
    input("Depth of roots", "length", season.roots_m),
    input("Used before watering", "ratio", season.depletion_ratio),
  ];
  const first = given?.months.find(({ watered_ratio }) => watered_ratio > 0);
  if (first === undefined) {
    return accountInWords({
      formula: say`Never: the soil's store and rain last through the season.`,
      inputs: held.map(({ name: of, value }) => remark(of, value)),
      source: commonPractice,
    });
  }
  const before = given?.months.slice(0, given.months.indexOf(first)) ?? [];
  return account(
    {
      formula: say`The soil is full at bud break. What is left of its store in ${name(first.month)}, over what vines draw in that month's time in leaf, is how far into it the store lasts.`,
      inputs: [
        ...held.map(({ name: of, value }) => remark(of, value)),
        remark("Drawn in the months before", [...drawn(before)]),
        input("Left for the month", "depth", first.fromSoil_mm),
        input("Needed in the month less rain", "depth", first.need_mm - first.rain_mm),
        input("In leaf from", "count", first.from),
        input("In leaf to", "count", first.to),
      ],
      source: "soil water by FAO-56, eq. 82 and 83, from memory; depths common practice, no source",
    },
    (left_mm = 0, drawn_mm = 1, from = 1, to = 1) => {
      const month = from + (left_mm / drawn_mm) * (to - from);
      return month < 13 ? month : month - 12;
    },
  );
}

function drawn(months: readonly GivenMonth[]) {
  const [first, ...more] = months;
  if (first === undefined) return say`none`;
  return inputs(
    "",
    "depth",
    [first, ...more].map(({ fromSoil_mm }) => fromSoil_mm),
  ).value;
}

function givenMonth({ season, source }: WateringJob, month: number): GivenMonth {
  const reference_mmpd = referenceEvapotranspiration(season, source);
  const found =
    reference_mmpd === null
      ? undefined
      : givenSeason(season, reference_mmpd).months.find((each) => each.month === month);
  if (found === undefined) throw new Error("a month's account is asked for where the season is known");
  return found;
}

function basisOf(job: WateringJob, watering: SeasonWatering, block: number): BlockBasis {
  const found = blockBases(job, watering)[block];
  if (found === undefined) throw new Error(`the job has no block ${block}`);
  return found;
}

function name(month: number): string {
  return monthNames[month - 1] ?? "";
}
