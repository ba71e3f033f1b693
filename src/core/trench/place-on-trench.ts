import type { Route } from "../mainline/route.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { Branch } from "./trench.ts";

/** A place on a trench: how far along which of its branches, horizontally from the branch's upstream end. */
export interface PlaceOnTrench {
  readonly branch: number;
  readonly station_m: number;
}

/** The place on the trench nearest to a point, within a reach in metres; null when none is. */
export function placeOnTrench(
  { xy }: Pick<Route, "xy">,
  branches: readonly Branch[],
  at: readonly [x_m: number, y_m: number],
  reach_m: number,
): PlaceOnTrench | null {
  let nearest: PlaceOnTrench | null = null;
  let least_m = reach_m;
  branches.forEach((branch, b) => {
    forEachLeg(xy, branch, (from, to, station_m) => {
      const { along, distance_m } = nearestOnSegment(at[0], at[1], from[0], from[1], to[0], to[1]);
      if (distance_m > least_m) return;
      least_m = distance_m;
      nearest = { branch: b, station_m: station_m + along * Math.hypot(to[0] - from[0], to[1] - from[1]) };
    });
  });
  return nearest;
}

/** Where a place on the trench is; null when there is no such branch. Stations past its ends are taken at the ends. */
export function pointOnTrench(
  { xy }: Pick<Route, "xy">,
  branches: readonly Branch[],
  place: PlaceOnTrench,
): PlanePoint | null {
  const branch = branches[place.branch];
  if (branch === undefined) return null;
  let point: PlanePoint | null = null;
  forEachLeg(xy, branch, (from, to, station_m) => {
    const length_m = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (point !== null && place.station_m < station_m) return;
    const share = length_m === 0 ? 0 : Math.min(1, Math.max(0, (place.station_m - station_m) / length_m));
    point = planePoint(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]));
  });
  return point;
}

/** Every leg of a branch with the station where it begins. */
export function forEachLeg(
  xy: Float64Array,
  { points }: Pick<Branch, "points">,
  tell: (from: PlanePoint, to: PlanePoint, station_m: number) => void,
): void {
  let station_m = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [pointAt(xy, points[i] ?? 0), pointAt(xy, points[i + 1] ?? 0)];
    tell(from, to, station_m);
    station_m += Math.hypot(to[0] - from[0], to[1] - from[1]);
  }
}

function pointAt(xy: Float64Array, i: number): PlanePoint {
  return planePoint(xy[2 * i] ?? 0, xy[2 * i + 1] ?? 0);
}
