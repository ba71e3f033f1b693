import { formatQuantity, momentInWords, monthNames, type Plan, type UnitSystem } from "../core/index.ts";
import { type Column, table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** What a vine needs in the month that needs most, a line a block; nothing while the season is not known. */
export function seasonNeed({ watering: watered }: Plan, units: UnitSystem): string {
  const { season } = watered?.watering ?? { season: null };
  const litres = (volume_l: number) => formatQuantity("volume", volume_l, units, 1);
  return (season ?? [])
    .map(({ peak, firstWatering }, b) => {
      const name = watered?.job.blocks[b]?.name ?? "";
      const first =
        firstWatering === null
          ? "soil and rain last through the season"
          : `watering begins about ${momentInWords(firstWatering)}`;
      return wrapped(
        `Need of ${name} in ${monthNames[peak.month - 1] ?? ""}: a grown vine ${litres(peak.peak_lpw)} a week at peak, ` +
          `${litres(peak.usual_lpw)} usually, a young one ${litres(peak.young_lpw)}; ${first}.`,
        "",
      );
    })
    .join("");
}

/** How long sets run against the hours there are. */
export function setTimes({ watering: watered }: Plan, units: UnitSystem): string {
  const { season, sets } = watered?.watering ?? { season: null, sets: [] };
  if (watered === null || season === null || sets.length === 0) return "";
  const hours = (time_h: number) => formatQuantity("time", time_h, units);
  const [worst] = [...season].sort((a, b) => b.peak.all_h - a.peak.all_h);
  if (worst === undefined) return "";
  const { peak } = worst;
  const { hoursADay_h } = watered.job.water;
  const sayAll = sets.length === 1 ? "" : `, all ${sets.length} sets ${hours(peak.usualAll_h)}`;
  const peakAll = sets.length === 1 ? "" : `, all ${hours(peak.all_h)}`;
  return wrapped(
    `Set time in ${monthNames[peak.month - 1] ?? ""}: one set usually runs ${hours(peak.usual_h)} a day${sayAll}; at peak ` +
      `${hours(peak.peak_h)}${peakAll}; ${hours(hoursADay_h)} a day there are` +
      `${peak.all_h > hoursADay_h ? ", which is too little at peak" : ""}.`,
    "",
  );
}

/** The year, a line a month in which anything is given; of a vine, a set and the block first what is usual, then what is given at peak. */
export function seasonTable({ watering: watered }: Plan, units: UnitSystem): string {
  const { season } = watered?.watering ?? { season: null };
  return (season ?? [])
    .map(({ months, usual_l, full_l }, b) => {
      const given = months.filter(({ peak_lpw }) => peak_lpw > 0);
      if (given.length === 0) return "";
      const column = (head: string, cell: (month: (typeof given)[number]) => string): Column => {
        return { head, cells: given.map(cell), isNumber: true };
      };
      const litres = (volume_l: number) =>
        formatQuantity("volume", volume_l, units, volume_l < 1000 ? 1 : units === "us" ? 0 : 2);
      const hours = (time_h: number) => (time_h === 0 ? "-" : formatQuantity("time", time_h, units));
      const name = watered?.job.blocks[b]?.name ?? "";
      return (
        table([
          { head: "month", cells: given.map(({ month }) => monthNames[month - 1] ?? "") },
          column("reference", ({ reference_mmpd }) =>
            formatQuantity("depth", reference_mmpd, units, units === "us" ? 2 : 1),
          ),
          column("crop", ({ crop }) => crop.toFixed(2)),
          column("vine/week", ({ usual_lpw }) => litres(usual_lpw)),
          column("at peak", ({ peak_lpw }) => litres(peak_lpw)),
          column("young", ({ young_lpw }) => litres(young_lpw)),
          column("set/day", ({ usual_h }) => hours(usual_h)),
          column("at peak", ({ peak_h }) => hours(peak_h)),
          column("block/day", ({ usual_lpd }) => litres(usual_lpd)),
          column("at peak", ({ peak_lpd }) => litres(peak_lpd)),
        ]) + wrapped(`${name} through the year: ${litres(usual_l)} usually, ${litres(full_l)} at the peak share.`, "")
      );
    })
    .join("");
}
