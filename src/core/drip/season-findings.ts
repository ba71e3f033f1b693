import { type Finding, listed, quantity, say, unplaced } from "../finding.ts";
import type { Monthly, SeasonSettings } from "../project/water-settings.ts";
import { fullLeafCoefficient, isOneSeason } from "./season/crop-curve.ts";
import { monthNames } from "./season/months.ts";
import type { WateringJob } from "./watering-job.ts";

/** Grass gives off no more than this in a usual day of any month on earth: a deep desert summer has about 12 mm. Common practice, no source. */
const mostReference_mmpd = 15;
/** In a season in which vines grow, grass gives off more than this in the best month. Common practice, no source. */
const leastReference_mmpd = 1;
/** No place has a mean of daily highs above this; 120 °F is 49 °C. */
const mostHighest_c = 50;

/**
 * What is odd about the season as it is stated, with the suspected cause, and that nothing of it is known. Findings: drip/season-not-known,
 * drip/reference-unlikely, drip/temperatures-crossed, drip/temperatures-unlikely, drip/stages-unordered, drip/stages-of-other-half,
 * drip/shares-crossed, drip/shade-and-coefficient.
 */
export function seasonFindings({ season, source, laterals, water }: WateringJob): readonly Finding[] {
  if (laterals.row.length === 0) return [];
  const { reference_mmpd, lowest_c, highest_c } = season;
  const fromTemperatures = reference_mmpd === null && lowest_c !== null && highest_c !== null;
  const isKnown = reference_mmpd !== null || fromTemperatures;
  const isHalf = lowest_c !== null || highest_c !== null;
  // While the water is not known either nothing is asked for yet.
  if (!isKnown) return isHalf || water.kind !== "unknown" ? [seasonNotKnown(isHalf)] : [];
  return [
    ...(reference_mmpd === null ? [] : unlikelyReference(reference_mmpd)),
    ...(fromTemperatures ? unlikelyTemperatures(lowest_c, highest_c) : []),
    ...(isOneSeason(season.stages) ? otherHalf(season, source.latitude_deg) : [stagesUnordered()]),
    ...(season.usualShare_ratio > season.peakShare_ratio ? [sharesCrossed(season)] : []),
    ...(season.shaded_ratio !== null && fullLeafCoefficient(season) < season.cropStart ? [thinShade(season)] : []),
  ];
}

function seasonNotKnown(isHalf: boolean): Finding {
  return unplaced(
    "drip/season-not-known",
    "note",
    isHalf
      ? say`Only one of the lowest and highest temperatures of the months is known.`
      : say`How much water the weather draws from the vines is not known yet.`,
    say`Without it nobody can say how much a vine needs in a week, how long sets run and whether the water lasts the summer.`,
    say`Enter reference evapotranspiration by month, from a weather station or a public climate table, or the lowest and highest temperatures of the months.`,
  );
}

function unlikelyReference(reference_mmpd: Monthly): readonly Finding[] {
  const most_mm = Math.max(...reference_mmpd);
  if (most_mm > mostReference_mmpd) {
    return [
      unplaced(
        "drip/reference-unlikely",
        "warning",
        say`Reference evapotranspiration of ${quantity("depth", most_mm)} a day in ${named(reference_mmpd, most_mm)} is more than any place on earth has.`,
        say`Vines would be given many times what they need, and no water would be enough.`,
        most_mm <= 31 * mostReference_mmpd
          ? say`Probably the number is of the whole month: divide it by the days of the month.`
          : say`Check the unit, and that it is of one day.`,
      ),
    ];
  }
  if (most_mm < leastReference_mmpd) {
    return [
      unplaced(
        "drip/reference-unlikely",
        "warning",
        say`Reference evapotranspiration stays at or below ${quantity("depth", most_mm)} a day all year, less than where vines grow.`,
        say`Vines would be given far too little.`,
        say`Probably the numbers are inches without their unit: a bare number counts as millimetres. Write "0.25 in".`,
      ),
    ];
  }
  return [];
}

function unlikelyTemperatures(lowest_c: Monthly, highest_c: Monthly): readonly Finding[] {
  const crossed = monthNames.filter((_, i) => Number(lowest_c[i]) > Number(highest_c[i]));
  const hottest_c = Math.max(...highest_c);
  return [
    ...(crossed.length === 0
      ? []
      : [
          unplaced(
            "drip/temperatures-crossed",
            "warning",
            say`The lowest temperature is above the highest in ${listed(crossed)}.`,
            say`The two are taken the other way round there, which is right only if they were swapped.`,
            say`Correct the temperatures of ${listed(crossed)}.`,
          ),
        ]),
    ...(hottest_c <= mostHighest_c
      ? []
      : [
          unplaced(
            "drip/temperatures-unlikely",
            "warning",
            say`Days as hot as ${quantity("temperature", hottest_c)} in ${named(highest_c, hottest_c)} are hotter than any place on earth has them in the mean.`,
            say`Vines would be given too much water.`,
            say`Probably the number is in degrees Fahrenheit without its unit: a bare number counts as degrees Celsius. Write "88 F".`,
          ),
        ]),
  ];
}

function stagesUnordered(): Finding {
  return unplaced(
    "drip/stages-unordered",
    "warning",
    say`Bud break, full leaf, first colour and leaf fall do not follow each other within a year.`,
    say`They are taken in the order of the calendar, which may not be what is meant.`,
    say`Enter them in their order; a season over the turn of the year goes on in January, such as 9.5, 12, 2.5, 5.`,
  );
}

/** Buds break in the first half of the year north of the equator, in the second half south of it; in the tropics at any time. */
function otherHalf({ stages: [budBreak] }: SeasonSettings, latitude_deg: number): readonly Finding[] {
  if (Math.abs(latitude_deg) < 23.4) return [];
  const isSpring = latitude_deg > 0 ? budBreak >= 2 && budBreak < 7 : budBreak >= 8 || budBreak < 1;
  if (isSpring) return [];
  const month = monthNames[Math.floor(budBreak) - 1] ?? "December";
  return [
    unplaced(
      "drip/stages-of-other-half",
      "warning",
      say`Buds break in ${month}, which is no spring ${latitude_deg > 0 ? "north" : "south"} of the equator, where this ground is.`,
      say`The need of the vines is reckoned from the weather of the wrong months.`,
      latitude_deg > 0
        ? say`Enter the stages of this place, such as 4, 6, 8.5 and 11.`
        : say`Enter the stages of this place, such as 9.5, 12, 2.5 and 5.`,
    ),
  ];
}

function sharesCrossed({ usualShare_ratio, peakShare_ratio }: SeasonSettings): Finding {
  return unplaced(
    "drip/shares-crossed",
    "warning",
    say`Usually ${quantity("ratio", usualShare_ratio)} of the full need is given, more than the ${quantity("ratio", peakShare_ratio)} at peak.`,
    say`The water and the hours are checked against the peak, which should be the most that is ever given.`,
    say`Set the share at peak at least as high as the usual one.`,
  );
}

function thinShade({ shaded_ratio, cropStart }: SeasonSettings): Finding {
  return unplaced(
    "drip/shade-and-coefficient",
    "note",
    say`Vines that shade ${quantity("ratio", shaded_ratio ?? 0)} of the ground at noon need less in full leaf than the coefficient at bud break, ${String(cropStart)}, says.`,
    say`The smaller one is taken for the whole season.`,
    say`Right for a young vineyard; else measure the shade at noon in full leaf.`,
  );
}

function named(monthly: Monthly, value: number): string {
  return monthNames[monthly.indexOf(value)] ?? "a month";
}
