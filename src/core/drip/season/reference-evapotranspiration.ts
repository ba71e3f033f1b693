import type { Monthly, SeasonSettings } from "../../project/water-settings.ts";
import { saturation_kpa } from "./air.ts";
import { hargreaves_mmpd } from "./hargreaves.ts";
import { midMonthDay, ofMonth } from "./months.ts";
import { penmanMonteith_mmpd } from "./penman-monteith.ts";
import { clearSky_mjpm2d, daylightFromWarmth_mjpm2d, extraterrestrial_mjpm2d } from "./sun.ts";

/** Where it is. */
export interface SeasonPlace {
  readonly latitude_deg: number;
  /** Above the sea, as far as heights are known. */
  readonly height_m: number;
}

const months: readonly number[] = Array.from({ length: 12 }, (_, i) => i + 1);

/** Wind where none is measured: the mean of over 2000 stations (FAO-56 chapter 3). */
const usualWind_mps = 2;

/**
 * Water that grass gives off on the usual day of each month, mm: as stated, else from temperatures; null while neither is known. From
 * temperatures by FAO-56 eq. 6 with what is missing estimated as its chapter 3 does, or by its eq. 52, as the settings choose.
 */
export function referenceEvapotranspiration(
  { reference_mmpd, lowest_c, highest_c, method }: SeasonSettings,
  place: SeasonPlace,
): Monthly | null {
  if (reference_mmpd !== null) return reference_mmpd;
  if (lowest_c === null || highest_c === null) return null;
  return months.map((month) => {
    const low_c = Math.min(ofMonth(lowest_c, month), ofMonth(highest_c, month));
    const high_c = Math.max(ofMonth(lowest_c, month), ofMonth(highest_c, month));
    if (method === "hargreaves") return hargreaves_mmpd(low_c, high_c, outside_mjpm2d(place, month));
    const mean_c = (other: number) => (ofMonth(lowest_c, other) + ofMonth(highest_c, other)) / 2;
    return fromTemperatures_mmpd(low_c, high_c, intoGround_mjpm2d(mean_c(month - 1), mean_c(month + 1)), place, month);
  });
}

/**
 * Water that grass gives off on the usual day of a month (1 to 12), mm, where nothing but temperatures is measured: dew falls at the lowest
 * temperature (FAO-56 eq. 48), daylight from how much warmer days are than nights (eq. 50), wind of 2 m/s.
 */
export function fromTemperatures_mmpd(
  lowest_c: number,
  highest_c: number,
  ground_mjpm2d: number,
  place: SeasonPlace,
  month: number,
): number {
  const outside = outside_mjpm2d(place, month);
  const daylight = daylightFromWarmth_mjpm2d(lowest_c, highest_c, outside);
  return penmanMonteith_mmpd({
    lowest_c,
    highest_c,
    vapour_kpa: saturation_kpa(lowest_c),
    wind_mps: usualWind_mps,
    daylight_mjpm2d: Math.min(daylight, clearSky_mjpm2d(place.height_m, outside)),
    outside_mjpm2d: outside,
    intoGround_mjpm2d: ground_mjpm2d,
    height_m: place.height_m,
  });
}

/** Warmth that goes into the ground in a month, MJ/m² a day, from the mean temperatures of the month before and the one after. FAO-56 eq. 43. */
export function intoGround_mjpm2d(before_c: number, after_c: number): number {
  return 0.07 * (after_c - before_c);
}

function outside_mjpm2d({ latitude_deg }: SeasonPlace, month: number): number {
  return extraterrestrial_mjpm2d(latitude_deg, midMonthDay(month));
}
