import type { Finding } from "../finding.ts";
import type { CoordinateSystem } from "./coordinate-system.ts";

/** What is to be said when a system's datum is taken for WGS 84: a note with the size of the difference, or none for WGS 84 itself. */
export function datumNote(_system: CoordinateSystem): readonly Finding[] {
  return [];
}
