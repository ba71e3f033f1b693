import type { HeightAt } from "../ground/elevation.ts";
import { placeOn, type Way } from "./way.ts";

/** Distances along the ground by horizontal ones, for one branch. */
export interface SlopeStations {
  readonly length_m: number;
  /** False where a height on the way is not known: that part counts as level. */
  readonly isKnown: boolean;
  /** For stations in ascending order. */
  at(station_m: number): number;
}

/**
 * Distances along the ground from heights about `step_m` apart, a post spacing: noise in heights a metre apart would lengthen every
 * trench. Between two such heights the ground is taken as even.
 */
export function slopeStations(way: Way, heightAt: HeightAt, step_m: number): SlopeStations {
  const steps = Math.max(1, Math.round(way.length_m / step_m));
  const along_m = way.length_m / steps;
  const slope_m = new Float64Array(steps + 1);
  let isKnown = true;
  let before_m: number | null = null;
  let leg = 0;
  for (let i = 0; i <= steps; i++) {
    const place = placeOn(way, i * along_m, leg);
    leg = place.leg;
    const height_m = heightAt(place.xy[0], place.xy[1]);
    if (height_m === null) isKnown = false;
    const rise_m = height_m === null || before_m === null ? 0 : height_m - before_m;
    if (i > 0) slope_m[i] = Number(slope_m[i - 1]) + Math.hypot(along_m, rise_m);
    before_m = height_m;
  }
  return {
    length_m: Number(slope_m[steps]),
    isKnown,
    at: (station_m) => {
      if (along_m === 0) return 0;
      const i = Math.min(steps - 1, Math.max(0, Math.floor(station_m / along_m)));
      const [from_m, to_m] = [Number(slope_m[i]), Number(slope_m[i + 1])];
      return from_m + ((to_m - from_m) * (station_m - i * along_m)) / along_m;
    },
  };
}
