import type { CoordinateSystem } from "./coordinate-system.ts";

/** A system as well-known text of the form that stands beside shapefiles (.prj, "WKT 1" in ESRI's spelling); null for the local plane. */
export function esriWkt(_system: CoordinateSystem): string | null {
  return null;
}
