import { momentInWords, monthNames } from "../drip/season/months.ts";
import { flowFor_lps } from "../drip/season/need.ts";
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

/** How to read the drawing, and what the water comes to by the hour. */
export function seasonReading(chart: SeasonChart, units: UnitSystem): readonly string[] {
  return [
    "Outlined: what is given at peak. Filled: what is usually given. Ring: young vines.",
    hoursInWords(chart, units),
    ...(chart.isEstimated ? ["Estimated from temperatures alone; a weather station nearby tells it better."] : []),
  ];
}

/** With sets what the hours a day bring, else the flow that it takes to give it all in them. */
function hoursInWords({ bound_lpw, hours_h, peak }: SeasonChart, units: UnitSystem): string {
  const hours = formatQuantity("time", hours_h, units);
  if (bound_lpw === null) {
    const flow = (day_l: number) => formatQuantity("flow", hours_h > 0 ? flowFor_lps(day_l, hours_h) * 3600 : 0, units);
    return `To give it in ${hours} a day takes ${flow(peak.usual_lpd)} usually and ${flow(peak.peak_lpd)} at peak, for the whole block.`;
  }
  const most = formatQuantity("volume", bound_lpw, units, 1);
  const enough =
    bound_lpw < peak.usual_lpw
      ? ", less than the usual share"
      : bound_lpw < peak.peak_lpw
        ? ", enough for the usual share but not at peak"
        : ", enough";
  return `${hours} a day bring at most ${most} a vine a week with all sets in turn${enough}.`;
}
