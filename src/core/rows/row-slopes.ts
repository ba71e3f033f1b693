import type { HeightAt } from "../ground/elevation.ts";
import type { PlanePoint } from "../plane/coordinate.ts";

/** How the ground falls under a row; null where it is flat or its heights are not known. */
export interface RowSlopes {
  /** The steepest place along the row, above 0 where it rises from the start to the end. */
  readonly slopeAlong_ratio: number | null;
  /** The steepest place across the row, above 0 where it rises to the right of who looks from start to end. */
  readonly slopeAcross_ratio: number | null;
  /** Where the ground falls to in the mean, clockwise from grid north, in [0, 360); null also where it lies level. */
  readonly fall_deg: number | null;
}

export const noSlopes: RowSlopes = { slopeAlong_ratio: null, slopeAcross_ratio: null, fall_deg: null };

/** Less than this is level: a millimetre in a kilometre has no direction. */
const level_ratio = 1e-6;

/**
 * Slope of the ground along and across a row, by differences over about `step_m` (a post spacing: what a machine stands on, and far enough
 * that noise in the heights does not count): along the row between places that far apart, across it in the middle between them over the
 * same distance, or over half of it where only one side is known. The slope of a plane comes out as its parts s · cos ψ and s · sin ψ
 * (calculation handbook, section 8.4).
 */
export function rowSlopes(
  heightAt: HeightAt,
  start: PlanePoint,
  end: PlanePoint,
  length_m: number,
  step_m: number,
): RowSlopes {
  const steps = Math.max(1, Math.round(length_m / step_m));
  const over_m = length_m / steps;
  const [east, north] = [(end[0] - start[0]) / length_m, (end[1] - start[1]) / length_m];
  const heightBeside = (station_m: number, right_m: number): number | null =>
    heightAt(start[0] + station_m * east + right_m * north, start[1] + station_m * north - right_m * east);
  let [along, across]: [number | null, number | null] = [null, null];
  let [sumAlong, sumAcross, samples] = [0, 0, 0];
  let before = heightBeside(0, 0);
  for (let i = 0; i < steps; i++) {
    const after = heightBeside((i + 1) * over_m, 0);
    const rise = before === null || after === null ? null : (after - before) / over_m;
    const tilt = slopeBeside((right_m) => heightBeside((i + 0.5) * over_m, right_m), over_m / 2);
    along = steeper(along, rise);
    across = steeper(across, tilt);
    if (rise !== null && tilt !== null) {
      sumAlong += rise;
      sumAcross += tilt;
      samples++;
    }
    before = after;
  }
  return { slopeAlong_ratio: along, slopeAcross_ratio: across, fall_deg: fall(sumAlong, sumAcross, samples) };

  function fall(alongSum: number, acrossSum: number, count: number): number | null {
    if (count === 0 || Math.hypot(alongSum, acrossSum) / count < level_ratio) return null;
    const down = [-(alongSum * east + acrossSum * north), -(alongSum * north - acrossSum * east)] as const;
    const bearing_deg = (Math.atan2(down[0], down[1]) * 180) / Math.PI;
    return (bearing_deg + 360) % 360;
  }
}

/** Rise a metre to the right, from the heights on both sides, or from the middle to the one that is known. */
function slopeBeside(heightAt: (right_m: number) => number | null, half_m: number): number | null {
  const [left, right] = [heightAt(-half_m), heightAt(half_m)];
  if (left !== null && right !== null) return (right - left) / (2 * half_m);
  const middle = heightAt(0);
  if (middle === null) return null;
  if (right !== null) return (right - middle) / half_m;
  return left === null ? null : (middle - left) / half_m;
}

function steeper(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other;
  return Math.abs(other) > Math.abs(one) ? other : one;
}
