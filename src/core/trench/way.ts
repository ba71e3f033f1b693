import type { Route } from "../mainline/route.ts";
import type { PlanePoint } from "../plane/coordinate.ts";
import { planePoint } from "../plane/coordinate.ts";
import type { Branch } from "./trench.ts";

/** A branch as a polyline in plan. */
export interface Way {
  /** x, y pairs of its points. */
  readonly xy: Float64Array;
  /** Horizontal, from its upstream end. */
  readonly station_m: Float64Array;
  readonly length_m: number;
}

export function wayOf({ xy }: Pick<Route, "xy">, { points }: Branch): Way {
  const own = Float64Array.from(points.flatMap((point) => [Number(xy[2 * point]), Number(xy[2 * point + 1])]));
  const station_m = new Float64Array(points.length);
  for (let i = 1; i < points.length; i++) {
    const [dx, dy] = [Number(own[2 * i]) - Number(own[2 * i - 2]), Number(own[2 * i + 1]) - Number(own[2 * i - 1])];
    station_m[i] = Number(station_m[i - 1]) + Math.hypot(dx, dy);
  }
  return { xy: own, station_m, length_m: station_m[points.length - 1] ?? 0 };
}

/** The place at a distance from the upstream end, and the leg it lies on, counted from 0; the ends for what is past them. */
export function placeOn(
  { xy, station_m }: Way,
  at_m: number,
  from = 0,
): { readonly xy: PlanePoint; readonly leg: number } {
  const last = Math.max(0, station_m.length - 2);
  let leg = from;
  while (leg < last && Number(station_m[leg + 1]) < at_m) leg++;
  const [begin_m, end_m] = [Number(station_m[leg]), Number(station_m[leg + 1] ?? station_m[leg])];
  const share = end_m > begin_m ? Math.min(1, Math.max(0, (at_m - begin_m) / (end_m - begin_m))) : 0;
  const [x, y] = [Number(xy[2 * leg]), Number(xy[2 * leg + 1])];
  const [toX, toY] = [Number(xy[2 * leg + 2] ?? x), Number(xy[2 * leg + 3] ?? y)];
  return { xy: planePoint(x + share * (toX - x), y + share * (toY - y)), leg };
}
