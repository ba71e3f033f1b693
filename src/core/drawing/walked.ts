import { type LonLat, lonLat } from "../plane/coordinate.ts";

/** One position that a phone gave, and how far it may be off by its own word. */
export interface Reading {
  readonly at: LonLat;
  readonly accuracy_m: number;
}

/** No phone knows its place better than this, whatever it says. */
const least_m = 0.01;

/**
 * The mean of several readings, each weighted by one over the square of its accuracy; null when there are none. The accuracy is that of
 * the weighted readings taken together, not smaller for their number: readings of one minute are off to the same side (from memory).
 */
export function meanPosition(readings: readonly Reading[]): Reading | null {
  const [first] = readings;
  if (first === undefined) return null;
  let [weights, lon, lat] = [0, 0, 0];
  for (const { at, accuracy_m } of readings) {
    const weight = 1 / Math.max(least_m, Number.isFinite(accuracy_m) ? accuracy_m : 1000) ** 2;
    weights += weight;
    lon += weight * (((((at[0] - first.at[0] + 180) % 360) + 360) % 360) - 180);
    lat += weight * (at[1] - first.at[1]);
  }
  const mean = first.at[0] + lon / weights;
  const turned = Math.abs(mean) <= 180 ? mean : mean - 360 * Math.sign(mean);
  return { at: lonLat(turned, first.at[1] + lat / weights), accuracy_m: Math.sqrt(readings.length / weights) };
}
