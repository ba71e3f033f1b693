import type { LonLat } from "../plane/coordinate.ts";

/** 8 decimals of a degree are 1.1 mm: enough to set a vine by, and what rovers read. */
const degreeDecimals = 8;
/** Lengths leave in whole millimetres. */
const lengthDecimals = 3;

/** A number with at most so many decimals; halves go away from zero. */
export function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const scaled = Math.abs(value) * scale;
  // Beyond, not every whole number is one of the machine's.
  if (!(scaled < 1e15)) return Number(value.toFixed(decimals));
  // Quicker than through text, which counts for a quarter of a million places.
  const size = Math.round(scaled) / scale;
  return value < 0 ? -size : size;
}

/** [longitude, latitude], rounded to 8 decimals, or to as many as said. */
export function position(at: LonLat, decimals: number = degreeDecimals): [number, number] {
  return [rounded(at[0], decimals), rounded(at[1], decimals)];
}

/** Metres, rounded to the millimetre. */
export function millimetres(length_m: number): number {
  return rounded(length_m, lengthDecimals);
}

/** A number as digits with at most so many decimals, never with an exponent, which not every reader takes: "0.00000012". */
export function digits(value: number, decimals: number): string {
  const fixed = value.toFixed(decimals);
  const short = fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed;
  return short === "-0" ? "0" : short;
}
