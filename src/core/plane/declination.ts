import wmm2025 from "geomagnetism/data/wmm-2025.json" with { type: "json" };
import Model from "geomagnetism/lib/model.js";
import type { LonLat } from "./coordinate.ts";

/** A day of the Gregorian calendar; month 1 to 12. */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** The field at a place and day. True bearing = compass bearing + declination (east is positive). */
export interface MagneticField {
  readonly declination_deg: number;
  /** Downward from the horizontal. */
  readonly inclination_deg: number;
  readonly north_nt: number;
  readonly east_nt: number;
  readonly down_nt: number;
}

/** The field, or why the model does not give it; no value is ever carried past the model's years. */
export type MagneticAnswer =
  | { readonly ok: true; readonly field: MagneticField }
  | { readonly ok: false; readonly reason: "not a day" | "before the model" | "after the model" };

/** First and last day of the World Magnetic Model 2025: issued 13 November 2024, published as valid to 2030.0. */
export const firstModelDay = { year: 2024, month: 11, day: 13 } as const satisfies CalendarDay;
export const lastModelDay = { year: 2029, month: 12, day: 31 } as const satisfies CalendarDay;

/**
 * Earth's magnetic field by the World Magnetic Model 2025 (package geomagnetism, its coefficients and its spherical harmonics), at a
 * height above the ellipsoid. Good to about half a degree, without the iron of posts, wires and tractors nearby: to find one's way, not to stake.
 * A module of its own because the model is only fetched by who asks for a compass reading.
 */
export function magneticField(at: LonLat, day: CalendarDay, height_m = 0): MagneticAnswer {
  if (!isDay(day)) return { ok: false, reason: "not a day" };
  const year = decimalYear(day);
  if (year < decimalYear(firstModelDay)) return { ok: false, reason: "before the model" };
  if (year > decimalYear(lastModelDay)) return { ok: false, reason: "after the model" };
  return { ok: true, field: fieldAt(at, year, height_m) };
}

/** The field for a year with a fraction (2027.5 is the middle of 2027); the caller has seen to it that the model covers it. */
export function fieldAt(at: LonLat, year: number, height_m: number): MagneticField {
  const { x, y, z, decl, incl } = modelFor(year).point([at[1], at[0], height_m / 1000]);
  return { declination_deg: decl, inclination_deg: incl, north_nt: x, east_nt: y, down_nt: z };
}

/** The model's coefficients change by a fixed amount a year. */
function modelFor(year: number): Model {
  const elapsed = year - wmm2025.epoch;
  const moved = (main: readonly number[], perYear: readonly number[]) =>
    main.map((coefficient, i) => coefficient + elapsed * (perYear[i] ?? 0));
  return new Model({
    ...wmm2025,
    main_field_coeff_g: moved(wmm2025.main_field_coeff_g, wmm2025.secular_var_coeff_g),
    main_field_coeff_h: moved(wmm2025.main_field_coeff_h, wmm2025.secular_var_coeff_h),
  });
}

/** Year with the share of it that has passed at the beginning of the day. */
export function decimalYear({ year, month, day }: CalendarDay): number {
  const lengths = monthLengths(year);
  const passed = lengths.slice(0, month - 1).reduce((sum, length) => sum + length, day - 1);
  return year + passed / (isLeap(year) ? 366 : 365);
}

function isDay({ year, month, day }: CalendarDay): boolean {
  if (![year, month, day].every(Number.isInteger)) return false;
  const length = monthLengths(year)[month - 1];
  return length !== undefined && day >= 1 && day <= length;
}

function monthLengths(year: number): readonly number[] {
  return [31, isLeap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
}

function isLeap(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}
