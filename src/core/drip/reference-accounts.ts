import { type Account, account, accountInWords, input, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { SeasonSettings } from "../project/water-settings.ts";
import { cropCurve, fullLeafCoefficient, meanCoefficient } from "./season/crop-curve.ts";
import { hargreaves_mmpd } from "./season/hargreaves.ts";
import { midMonthDay, monthNames, ofMonth } from "./season/months.ts";
import { fromTemperatures_mmpd, intoGround_mjpm2d } from "./season/reference-evapotranspiration.ts";
import { extraterrestrial_mjpm2d } from "./season/sun.ts";
import type { WateringJob } from "./watering-job.ts";

/** How reference evapotranspiration of a month (1 to 12) came about, mm a day; told in words while it is not known. */
export function referenceAccount({ season, source }: Pick<WateringJob, "season" | "source">, month: number): Account {
  const { reference_mmpd, lowest_c, highest_c, method } = season;
  if (reference_mmpd !== null) {
    return account(
      {
        formula: say`As entered for ${name(month)}.`,
        inputs: [input("Entered", "depth", ofMonth(reference_mmpd, month))],
        source: "as set",
      },
      (entered_mm = 0) => entered_mm,
    );
  }
  if (lowest_c === null || highest_c === null) {
    return accountInWords({ formula: say`Not known yet.`, inputs: [], source: "as set" });
  }
  const [one_c, other_c] = [ofMonth(lowest_c, month), ofMonth(highest_c, month)];
  const temperatures = [
    input("Lowest of a usual day", "temperature", Math.min(one_c, other_c)),
    input("Highest of a usual day", "temperature", Math.max(one_c, other_c)),
    input("Latitude", "angle", source.latitude_deg),
  ];
  if (method === "hargreaves") {
    return account(
      {
        formula: say`From how much warmer the days of ${name(month)} are than its nights, and from the sun of its middle day.`,
        inputs: temperatures,
        source: "FAO-56, eq. 52",
      },
      (low_c = 0, high_c = 0, latitude_deg = 0) =>
        hargreaves_mmpd(low_c, high_c, extraterrestrial_mjpm2d(latitude_deg, midMonthDay(month))),
    );
  }
  const mean_c = (of: number) => (ofMonth(lowest_c, of) + ofMonth(highest_c, of)) / 2;
  return account(
    {
      formula: say`By sun, warmth, dry air and wind on the middle day of ${name(month)}. Only temperatures are known: dew is taken to fall at the lowest, sunshine from how much warmer days are than nights, wind as 2 m/s.`,
      inputs: [
        ...temperatures,
        input("Height above the sea", "length", source.height_m),
        input("Mean of the month before", "temperature", mean_c(month - 1)),
        input("Mean of the month after", "temperature", mean_c(month + 1)),
      ],
      source: "FAO-56, eq. 6, with eq. 43, 48 and 50 for what is missing",
    },
    (low_c = 0, high_c = 0, latitude_deg = 0, height_m = 0, before_c = 0, after_c = 0) =>
      fromTemperatures_mmpd(low_c, high_c, intoGround_mjpm2d(before_c, after_c), { latitude_deg, height_m }, month),
  );
}

/** How the mean crop coefficient of a month (1 to 12) came about. */
export function cropAccount(season: SeasonSettings, month: number): Account {
  const { months, coefficients } = cropCurve(season);
  const begins = month < Math.floor(months[0]) ? month + 12 : month;
  return account(
    {
      formula: say`Mean over ${name(month)} of straight lines from bud break over full leaf and first colour to leaf fall; nothing outside them.`,
      inputs: [
        input("Coefficient at bud break", "count", coefficients[0]),
        input("Coefficient in full leaf", "count", coefficients[1]),
        input("Coefficient at leaf fall", "count", coefficients[3]),
        input("Bud break, month", "count", months[0]),
        input("Full leaf, month", "count", months[1]),
        input("First colour, month", "count", months[2]),
        input("Leaf fall, month", "count", months[3]),
        ...(season.shaded_ratio === null
          ? []
          : [
              remark(
                "In full leaf",
                say`0.002 and 0.017 for each per cent of ground shaded at noon: ${String(fullLeafCoefficient(season))}`,
              ),
            ]),
      ],
      source:
        season.shaded_ratio === null
          ? "FAO-56, figure 34; coefficients of wine grapes from its table 12"
          : "FAO-56, figure 34; full leaf by Williams and Ayars 2005, from memory",
    },
    (start = 0, mid = 0, end = 0, budBreak = 0, fullLeaf = 0, ripening = 0, leafFall = 0) =>
      meanCoefficient(
        { months: [budBreak, fullLeaf, ripening, leafFall], coefficients: [start, mid, mid, end] },
        begins,
        begins + 1,
      ),
  );
}

function name(month: number): string {
  return monthNames[month - 1] ?? "";
}
