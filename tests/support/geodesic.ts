import geographiclib from "geographiclib-geodesic/geographiclib-geodesic.js";
import type { LonLat } from "../../src/core/plane/coordinate.ts";
import { lonLat } from "../../src/core/plane/coordinate.ts";

/** Lengths, azimuths and areas on the ellipsoid (GeographicLib), to hold the plane against; for comparison only. */
const wgs84 = geographiclib.Geodesic.WGS84;

/** Shortest line between two places: length in metres and azimuth at its beginning, clockwise from true north in (-180, 180]. */
export function geodesic(from: LonLat, to: LonLat): { readonly length_m: number; readonly azimuth_deg: number } {
  const { s12, azi1 } = wgs84.Inverse(from[1], from[0], to[1], to[0]);
  if (s12 === undefined || azi1 === undefined) throw new Error("no geodesic");
  return { length_m: s12, azimuth_deg: azi1 };
}

/** Where a line of a length and azimuth ends. */
export function destination(from: LonLat, azimuth_deg: number, length_m: number): LonLat {
  const { lat2, lon2 } = wgs84.Direct(from[1], from[0], azimuth_deg, length_m);
  if (lat2 === undefined || lon2 === undefined) throw new Error("no destination");
  return lonLat(lon2, lat2);
}

/** Area of a ring with geodesic sides, m², positive counter-clockwise. */
export function geodesicArea(ring: readonly LonLat[]): number {
  const polygon = wgs84.Polygon(false);
  for (const [lon, lat] of ring) polygon.AddPoint(lat, lon);
  const { area } = polygon.Compute(false, true);
  if (area === undefined) throw new Error("no area");
  return area;
}
