import type { HeightAt } from "../ground/elevation.ts";
import type { PlanePoint } from "../plane/coordinate.ts";

/** Heights of the ground from one place straight to another, even steps apart, both ends with them. */
export interface HeightsAlong {
  readonly height_m: Float64Array;
  readonly isKnown: boolean;
}

/**
 * Heights about `step_m` apart (a post spacing: noise in heights nearer to each other would tilt every vine's ground); where one is not known it
 * is taken as `unknown_m`.
 */
export function heightsAlong(
  heightAt: HeightAt,
  from: PlanePoint,
  to: PlanePoint,
  step_m: number,
  unknown_m: number,
): HeightsAlong {
  const steps = Math.max(1, Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) / step_m));
  const height_m = new Float64Array(steps + 1);
  let isKnown = true;
  for (let i = 0; i <= steps; i++) {
    const share = i / steps;
    const read_m = heightAt(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]));
    if (read_m === null) isKnown = false;
    height_m[i] = read_m ?? unknown_m;
  }
  return { height_m, isKnown };
}

/** The height at a share of the way, straight between those that were read; past the ends as at the ends. */
export function heightAtShare({ height_m }: HeightsAlong, share: number): number {
  const steps = height_m.length - 1;
  const at = Math.min(Math.max(share, 0), 1) * steps;
  const i = Math.min(Math.floor(at), steps - 1);
  const low_m = Number(height_m[i]);
  return low_m + (Number(height_m[i + 1]) - low_m) * (at - i);
}

/** Above 0 where the ground rises at a share of the way, below 0 where it falls. */
export function riseAtShare({ height_m }: HeightsAlong, share: number): number {
  const steps = height_m.length - 1;
  const i = Math.min(Math.floor(Math.min(Math.max(share, 0), 1) * steps), steps - 1);
  return Number(height_m[i + 1]) - Number(height_m[i]);
}
