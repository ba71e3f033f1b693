import { failure, type Outcome } from "../outcome.ts";
import type { CoordinateSystem } from "./coordinate-system.ts";
import { badSystem } from "./findings.ts";

/** The system that a well-known text describes (.prj files, `gpkg_spatial_ref_sys`). Findings: `systems/bad-system`, `systems/unknown-system`. */
export function systemOfWkt(wkt: string): Outcome<CoordinateSystem> {
  return failure([badSystem(wkt.slice(0, 60), "well-known text is not read yet")]);
}
