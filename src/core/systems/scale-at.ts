import type { CoordinateSystem } from "./coordinate-system.ts";

/** How a system's numbers differ from the ground at a place. */
export interface ScaleAt {
  /** Length by the system's numbers over length on the ellipsoid, the mean of north and east; 1 where they agree. */
  readonly scale_ratio: number;
  /** Grid bearing = true bearing - convergence, degrees. */
  readonly convergence_deg: number;
}

/** Scale factor and convergence of a projected system at a place, by stepping north and east; null for degrees. */
export function scaleAt(_system: CoordinateSystem, _lon_deg: number, _lat_deg: number): ScaleAt | null {
  return null;
}
