import { lonLat, planePoint } from "../plane/coordinate.ts";
import { createFrame } from "../plane/frame.ts";
import type { CoordinateSystem } from "./coordinate-system.ts";
import { unitLength_m } from "./unit-length.ts";

/** How a system's numbers differ from the ground at a place. */
export interface ScaleAt {
  /** Length by the system's numbers over length on the ellipsoid, the mean of north and east; 1 where they agree. */
  readonly scale_ratio: number;
  /** Grid bearing = true bearing - convergence, degrees. */
  readonly convergence_deg: number;
}

/** Steps to each side: far enough that the digits of a coordinate do not show, near enough that the scale does not change. */
const step_m = 50;

/**
 * Scale factor and convergence of a projected system at a place, by stepping north and east in a plane around it; null for degrees and
 * where the system gives no numbers. Both are of the ellipsoid: ground h above it is longer by h over 6,371 km.
 */
export function scaleAt(system: CoordinateSystem, lon_deg: number, lat_deg: number): ScaleAt | null {
  if (system.unit === "deg") return null;
  const frame = createFrame(lonLat(lon_deg, lat_deg));
  const at = (x_m: number, y_m: number) => {
    const [lon, lat] = frame.toLonLat(planePoint(x_m, y_m));
    return system.fromLonLat(lon, lat);
  };
  const [[west, south], [east, north]] = [at(0, -step_m), at(0, step_m)];
  const [[left, low], [right, high]] = [at(-step_m, 0), at(step_m, 0)];
  const unit_m = unitLength_m[system.unit];
  const northward = Math.hypot(east - west, north - south);
  const eastward = Math.hypot(right - left, high - low);
  const scale_ratio = (((northward + eastward) / 2) * unit_m) / (2 * step_m);
  if (!Number.isFinite(scale_ratio) || scale_ratio === 0) return null;
  const isTurned = /\+axis=wsu\b/.test(system.definition);
  const [x, y] = isTurned ? [west - east, south - north] : [east - west, north - south];
  // Grid bearing of true north is the convergence with its sign turned.
  return { scale_ratio, convergence_deg: (-Math.atan2(x, y) * 180) / Math.PI };
}
