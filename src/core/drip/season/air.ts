/** Pressure of the air at a height above the sea, kPa. FAO-56 eq. 7. */
export function airPressure_kpa(height_m: number): number {
  return 101.3 * ((293 - 0.0065 * height_m) / 293) ** 5.26;
}

/** Psychrometric constant at a height above the sea, kPa a degree. FAO-56 eq. 8. */
export function psychrometric_kpapc(height_m: number): number {
  return 0.665e-3 * airPressure_kpa(height_m);
}

/** Most vapour that air of a temperature holds, kPa. FAO-56 eq. 11. */
export function saturation_kpa(temperature_c: number): number {
  return 0.6108 * Math.exp((17.27 * temperature_c) / (temperature_c + 237.3));
}

/** How fast that grows with temperature, kPa a degree. FAO-56 eq. 13. */
export function saturationSlope_kpapc(temperature_c: number): number {
  return (4098 * saturation_kpa(temperature_c)) / (temperature_c + 237.3) ** 2;
}
