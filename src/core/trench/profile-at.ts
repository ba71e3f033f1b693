import type { Profile } from "./trench.ts";

/** One place of a profile; heights are NaN where the ground is not known. */
export interface ProfilePlace {
  readonly station_m: number;
  readonly slopeStation_m: number;
  readonly xy: readonly [x_m: number, y_m: number];
  readonly ground_m: number;
  readonly pipe_m: number;
  readonly bottom_m: number;
  readonly depth_m: number;
}

/** The profile at a station, straight between the places it has; held to its ends. */
export function profileAt(profile: Profile, at_m: number): ProfilePlace {
  const { station_m, xy } = profile;
  const last = station_m.length - 1;
  let [low, high] = [0, last];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((station_m[middle] ?? 0) < at_m) low = middle + 1;
    else high = middle;
  }
  const after = Math.max(0, high);
  const before = (station_m[after] ?? 0) > at_m ? Math.max(0, after - 1) : after;
  const [from_m, to_m] = [station_m[before] ?? 0, station_m[after] ?? 0];
  const share = to_m === from_m ? 0 : Math.min(1, Math.max(0, (at_m - from_m) / (to_m - from_m)));
  const between = (values: Float64Array, step = 1, shift = 0): number => {
    const [from, to] = [values[before * step + shift] ?? Number.NaN, values[after * step + shift] ?? Number.NaN];
    // At a place itself its neighbour may be unknown.
    return share === 0 ? from : share === 1 ? to : from + share * (to - from);
  };
  return {
    station_m: between(station_m),
    slopeStation_m: between(profile.slopeStation_m),
    xy: [between(xy, 2, 0), between(xy, 2, 1)],
    ground_m: between(profile.ground_m),
    pipe_m: between(profile.pipe_m),
    bottom_m: between(profile.bottom_m),
    depth_m: between(profile.depth_m),
  };
}
