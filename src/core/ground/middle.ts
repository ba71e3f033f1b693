import { type LonLat, lonLat } from "../plane/coordinate.ts";
import type { Parcel } from "../project/project.ts";
import type { Rings } from "./ground.ts";
import { forEachEdge } from "./outlines.ts";

/** Middle of the parcels' bounding box in degrees, to 6 decimals: where the frame's origin is set at the first plan. */
export function middleOf(parcels: readonly Parcel[]): LonLat {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { polygons } of parcels) {
    for (const [outer] of polygons) {
      for (const [lon, lat] of outer ?? []) {
        west = Math.min(west, lon);
        east = Math.max(east, lon);
        south = Math.min(south, lat);
        north = Math.max(north, lat);
      }
    }
  }
  const rounded = (degrees: number) => Math.round(degrees * 1e6) / 1e6;
  return lonLat(rounded((((west + east) / 2 + 540) % 360) - 180), rounded((south + north) / 2));
}

/** Area of rings by the shoelace formula (outer counter-clockwise, holes clockwise), in m2, and its centroid. */
export function areaOf(rings: Rings): { readonly area_m2: number; readonly centroid: readonly [number, number] } {
  const x0 = rings.xy[0] ?? 0;
  const y0 = rings.xy[1] ?? 0;
  let twice = 0;
  let mx = 0;
  let my = 0;
  forEachEdge(rings, (_, px, py, qx, qy) => {
    const cross = (px - x0) * (qy - y0) - (qx - x0) * (py - y0);
    twice += cross;
    mx += cross * (px - x0 + qx - x0);
    my += cross * (py - y0 + qy - y0);
  });
  if (twice === 0) return { area_m2: 0, centroid: [x0, y0] };
  return { area_m2: twice / 2, centroid: [x0 + mx / (3 * twice), y0 + my / (3 * twice)] };
}

/** Area-weighted middle of several polygons. */
export function centreOf(all: readonly Rings[]): readonly [x_m: number, y_m: number] {
  let [sum, x, y] = [0, 0, 0];
  for (const rings of all) {
    const { area_m2, centroid } = areaOf(rings);
    sum += area_m2;
    x += area_m2 * centroid[0];
    y += area_m2 * centroid[1];
  }
  return sum > 0 ? [x / sum, y / sum] : [0, 0];
}
