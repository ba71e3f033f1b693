import type { HeightAt } from "../ground/elevation.ts";
import type { Route } from "../mainline/route.ts";
import { slopeStations } from "./slope-stations.ts";
import type { Branch, Profile } from "./trench.ts";
import { placeOn, wayOf } from "./way.ts";

/** What lies over and under the middle of the pipe. */
export interface Layers {
  readonly cover_m: number;
  readonly outside_m: number;
  readonly bedding_m: number;
}

/** How far apart heights are read: for whoever digs, and for lengths along the ground. */
export interface Steps {
  readonly stationStep_m: number;
  readonly groundStep_m: number;
}

/** Stations nearer to a point of the route than this are that point. */
const same_m = 1e-3;

/** Ground to trench bottom: cover, pipe and bedding (calculation handbook, section 7). */
export function depthOf({ cover_m, outside_m, bedding_m }: Layers): number {
  return cover_m + outside_m + bedding_m;
}

/**
 * A branch along the ground at constant cover: a station at every point of the route and at every step. Where the ground is not known its
 * heights are NaN, and nothing is guessed; the depth is that of the cover there too.
 */
export function profileOf(
  route: Pick<Route, "xy" | "row">,
  branch: Branch,
  heightAt: HeightAt,
  layers: Layers,
  { stationStep_m, groundStep_m }: Steps,
): { readonly profile: Profile; readonly isKnown: boolean } {
  const way = wayOf(route, branch);
  const slopes = slopeStations(way, heightAt, groundStep_m);
  const stations = stationsOf(way.station_m, stationStep_m);
  const count = stations.length;
  const xy = new Float64Array(2 * count);
  const ground_m = new Float64Array(count);
  let leg = 0;
  let isKnown = slopes.isKnown;
  stations.forEach(({ at_m, point }, i) => {
    const place = placeOn(way, at_m, leg);
    leg = place.leg;
    // A point is where the route has it, to the last bit.
    const [x, y] = point < 0 ? place.xy : [Number(way.xy[2 * point]), Number(way.xy[2 * point + 1])];
    xy.set([x, y], 2 * i);
    const height_m = heightAt(x, y);
    if (height_m === null) isKnown = false;
    ground_m[i] = height_m ?? Number.NaN;
  });
  const depth_m = depthOf(layers);
  const profile: Profile = {
    station_m: Float64Array.from(stations, ({ at_m }) => at_m),
    slopeStation_m: Float64Array.from(stations, ({ at_m }) => slopes.at(at_m)),
    xy,
    ground_m,
    pipe_m: ground_m.map((height_m) => height_m - layers.cover_m - layers.outside_m / 2),
    bottom_m: ground_m.map((height_m) => height_m - depth_m),
    depth_m: new Float64Array(count).fill(depth_m),
    row: Int32Array.from(stations, ({ point }) => route.row[branch.points[point] ?? -1] ?? -1),
    point: Int32Array.from(stations, ({ point }) => branch.points[point] ?? -1),
  };
  return { profile, isKnown };
}

interface Station {
  readonly at_m: number;
  /** Of the branch, or -1. */
  readonly point: number;
}

/** The points, and every step between them. */
function stationsOf(points_m: Float64Array, step_m: number): readonly Station[] {
  const stations: Station[] = [];
  let next = 1;
  points_m.forEach((at_m, point) => {
    for (; next * step_m < at_m - same_m; next++) stations.push({ at_m: next * step_m, point: -1 });
    if (next * step_m < at_m + same_m) next++;
    stations.push({ at_m, point });
  });
  return stations;
}
