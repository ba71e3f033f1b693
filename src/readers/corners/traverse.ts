import { type LonLat, lonLat, planePoint } from "../../core/plane/coordinate.ts";
import { createFrame } from "../../core/plane/frame.ts";

/** A side in metres, from true north. */
export interface Side {
  readonly bearing_deg: number;
  readonly length_m: number;
}

/** How a boundary comes back to its beginning. */
export interface Closure {
  readonly east_m: number;
  readonly north_m: number;
  readonly error_m: number;
  readonly length_m: number;
  readonly ratio: number | null;
}

/** Less than any survey can tell: the end is on the beginning. */
const nothing_m = 1e-6;

/**
 * By how much the end of a boundary misses its beginning: sums of the sides' parts to the east and to the north (departures and
 * latitudes), the error and its share of the way. Every bearing counts from one north, that of the beginning.
 */
export function closureOf(sides: readonly Side[]): Closure {
  const end = cornersFrom(sides).at(-1) ?? [0, 0];
  const [east_m, north_m] = end;
  const length_m = sides.reduce((sum, side) => sum + side.length_m, 0);
  const error_m = Math.hypot(east_m, north_m);
  return { east_m, north_m, error_m, length_m, ratio: error_m < nothing_m ? null : length_m / error_m };
}

/** Metres east and north of the beginning, after each side. */
export function cornersFrom(sides: readonly Side[]): readonly (readonly [east_m: number, north_m: number])[] {
  let [east_m, north_m] = [0, 0];
  return sides.map(({ bearing_deg, length_m }) => {
    const angle = (bearing_deg * Math.PI) / 180;
    east_m += length_m * Math.sin(angle);
    north_m += length_m * Math.cos(angle);
    return [east_m, north_m] as const;
  });
}

/** The corners of a boundary on the earth, its beginning first; bearings count from true north at the beginning. */
export function placesFrom(begin: LonLat, sides: readonly Side[]): readonly LonLat[] {
  const frame = createFrame(lonLat(begin[0], begin[1]));
  return [begin, ...cornersFrom(sides).map(([east_m, north_m]) => frame.toLonLat(planePoint(east_m, north_m)))];
}
