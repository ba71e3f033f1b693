import type { LonLat } from "../plane/coordinate.ts";
import { type DrawnShape, placesOf } from "./read-shape.ts";

/** Why a position is no place on the globe, or no place for vines. */
export type PlaceFault = "projected" | "swapped" | "out-of-range";

/** Beyond this, in either number, it is no degree but a length: the globe has 360 degrees. */
const noDegree = 1000;
/** No vine grows this far from the equator. */
const furthest_deg = 66;

/**
 * The first position of a shape that cannot stand in a lon/lat file, with the reason: metres of a projection, latitude and longitude
 * proven to be swapped (a latitude beyond 90, or beyond 66 where the longitude is not), or off the globe.
 */
export function placeFault(shape: DrawnShape): { readonly fault: PlaceFault; readonly at: LonLat } | null {
  for (const at of placesOf(shape)) {
    const fault = faultOf(Math.abs(at[0]), Math.abs(at[1]));
    if (fault !== null) return { fault, at };
  }
  return null;
}

function faultOf(lon: number, lat: number): PlaceFault | null {
  if (lon > noDegree || lat > noDegree) return "projected";
  if (lat > 90 && lat <= 180 && lon <= 90) return "swapped";
  if (lat > 90 || lon > 180) return "out-of-range";
  return lat > furthest_deg && lon <= furthest_deg ? "swapped" : null;
}

/** Is the place outside the latitudes where vines grow (about 25 to 58 degrees, from memory), though its longitude would be one? */
export function isPerhapsSwapped([lon_deg, lat_deg]: LonLat): boolean {
  return !growsVines(lat_deg) && growsVines(lon_deg);
}

function growsVines(latitude_deg: number): boolean {
  const away = Math.abs(latitude_deg);
  return away >= 25 && away <= 58;
}
