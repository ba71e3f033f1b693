import { planePoint } from "../core/plane/coordinate.ts";
import type { Frame } from "../core/plane/frame.ts";

/** Longitude and latitude as a map library takes them. */
export type LngLat = [lng_deg: number, lat_deg: number];

/** From plane metres to the map; longitudes stay on the frame origin's side of the antimeridian, so that no line runs around the world. */
export interface Placing {
  readonly frame: Frame;
  lngLat(x_m: number, y_m: number): LngLat;
  /** Every place of a list of x and y in turn. */
  lngLats(xy: Float64Array): LngLat[];
}

/** The placing of a frame. */
export function createPlacing(frame: Frame): Placing {
  const lngLat = (x_m: number, y_m: number): LngLat => {
    const at = frame.toLonLat(planePoint(x_m, y_m));
    return [nearLongitude(at[0], frame.origin[0]), at[1]];
  };
  return {
    frame,
    lngLat,
    lngLats: (xy) => Array.from({ length: xy.length / 2 }, (_, i) => lngLat(xy[2 * i] ?? 0, xy[2 * i + 1] ?? 0)),
  };
}

/** The same meridian, written within 180 degrees of another. */
export function nearLongitude(lon_deg: number, reference_deg: number): number {
  const turns = Math.round((lon_deg - reference_deg) / 360);
  return turns === 0 ? lon_deg : lon_deg - 360 * turns;
}
