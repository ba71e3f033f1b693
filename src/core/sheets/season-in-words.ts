import { momentInWords, monthNames } from "../drip/season/months.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";
import type { SeasonChart } from "./season-chart.ts";

/** The season in a sentence or two, for those who do not see the drawing. */
export function seasonInWords({ block, peak, firstWatering }: SeasonChart, units: UnitSystem): string {
  const litres = (volume_l: number) => formatQuantity("volume", volume_l, units, 1);
  const month = monthNames[peak.month - 1] ?? "";
  const when =
    firstWatering === null
      ? "The soil and the rain last through the season."
      : `First watering about ${momentInWords(firstWatering)}, when the soil's winter store is used up.`;
  return `Water of ${block} through the year: most in ${month}, usually ${litres(peak.usual_lpw)} a vine a week, ${litres(peak.peak_lpw)} at peak, ${litres(peak.young_lpw)} for young vines. ${when}`;
}

/** How to read the drawing. */
export function seasonReading(
  { bound_lpw, hours_h, peak, isEstimated }: SeasonChart,
  units: UnitSystem,
): readonly string[] {
  const bound =
    bound_lpw === null
      ? []
      : [
          `${formatQuantity("time", hours_h, units)} a day bring at most ${formatQuantity("volume", bound_lpw, units, 1)} a vine a week with all sets in turn${
            bound_lpw < peak.usual_lpw
              ? ", less than the usual share"
              : bound_lpw < peak.peak_lpw
                ? ", enough for the usual share but not at peak"
                : ", enough"
          }.`,
        ];
  return [
    "Outlined: what is given at peak. Filled: what is usually given. Ring: young vines.",
    ...bound,
    ...(isEstimated ? ["Estimated from temperatures alone; a weather station nearby tells it better."] : []),
  ];
}
