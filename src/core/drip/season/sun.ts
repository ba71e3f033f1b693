/** MJ/m² a minute. */
const solarConstant = 0.082;

/** Daylight of a day of the year (1 is the first of January) outside the air, MJ/m² a day; 0 in the polar night. FAO-56 eq. 21 and 23 to 25. */
export function extraterrestrial_mjpm2d(latitude_deg: number, dayOfYear: number): number {
  const latitude = (latitude_deg * Math.PI) / 180;
  const season = (2 * Math.PI * dayOfYear) / 365;
  const nearness = 1 + 0.033 * Math.cos(season);
  const declination = 0.409 * Math.sin(season - 1.39);
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(latitude) * Math.tan(declination))));
  const height =
    sunset * Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset);
  return ((24 * 60) / Math.PI) * solarConstant * nearness * Math.max(0, height);
}

/** Daylight on the ground under a clear sky, MJ/m² a day. FAO-56 eq. 37. */
export function clearSky_mjpm2d(height_m: number, outside_mjpm2d: number): number {
  return (0.75 + 2e-5 * height_m) * outside_mjpm2d;
}

/** Share of the daylight that reaches the ground, by degree of warming: inland. FAO-56 eq. 50; 0.19 on a coast. */
const inland = 0.16;

/** Daylight on the ground from how much warmer days are than nights, MJ/m² a day. FAO-56 eq. 50. */
export function daylightFromWarmth_mjpm2d(lowest_c: number, highest_c: number, outside_mjpm2d: number): number {
  return inland * Math.sqrt(Math.max(0, highest_c - lowest_c)) * outside_mjpm2d;
}
