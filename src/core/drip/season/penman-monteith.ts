import { psychrometric_kpapc, saturation_kpa, saturationSlope_kpapc } from "./air.ts";
import { clearSky_mjpm2d } from "./sun.ts";

/** Weather of a day, or of the usual day of a month. */
export interface Weather {
  readonly lowest_c: number;
  readonly highest_c: number;
  /** Vapour in the air. */
  readonly vapour_kpa: number;
  /** At 2 m. */
  readonly wind_mps: number;
  /** Daylight on the ground, and outside the air. */
  readonly daylight_mjpm2d: number;
  readonly outside_mjpm2d: number;
  /** Warmth that goes into the ground. */
  readonly intoGround_mjpm2d: number;
  /** Above the sea. */
  readonly height_m: number;
}

const reflected = 0.23;
/** Stefan and Boltzmann, MJ/m² a day. */
const radiated = 4.903e-9;
const zero_k = 273.16;

/** What grass keeps of daylight less what it radiates, MJ/m² a day. FAO-56 eq. 38 to 40. */
export function netRadiation_mjpm2d(weather: Weather): number {
  return (1 - reflected) * weather.daylight_mjpm2d - radiatedAway_mjpm2d(weather);
}

/** Warmth radiated to the sky, MJ/m² a day. FAO-56 eq. 39; without daylight the sky counts as clear. */
export function radiatedAway_mjpm2d(weather: Weather): number {
  const { lowest_c, highest_c, vapour_kpa, height_m, outside_mjpm2d, daylight_mjpm2d } = weather;
  const clear_mjpm2d = clearSky_mjpm2d(height_m, outside_mjpm2d);
  const clearness = clear_mjpm2d > 0 ? Math.min(1, daylight_mjpm2d / clear_mjpm2d) : 1;
  const warmth = ((highest_c + zero_k) ** 4 + (lowest_c + zero_k) ** 4) / 2;
  return radiated * warmth * (0.34 - 0.14 * Math.sqrt(vapour_kpa)) * (1.35 * clearness - 0.35);
}

/** Water that grass gives off, mm a day; not below 0. FAO-56 eq. 6 with eq. 12. */
export function penmanMonteith_mmpd(weather: Weather): number {
  const { lowest_c, highest_c, vapour_kpa, wind_mps, intoGround_mjpm2d, height_m } = weather;
  const mean_c = (lowest_c + highest_c) / 2;
  const slope = saturationSlope_kpapc(mean_c);
  const constant = psychrometric_kpapc(height_m);
  const lacking_kpa = (saturation_kpa(lowest_c) + saturation_kpa(highest_c)) / 2 - vapour_kpa;
  const bySun = 0.408 * slope * (netRadiation_mjpm2d(weather) - intoGround_mjpm2d);
  const byWind = constant * (900 / (mean_c + 273)) * wind_mps * lacking_kpa;
  return Math.max(0, (bySun + byWind) / (slope + constant * (1 + 0.34 * wind_mps)));
}
