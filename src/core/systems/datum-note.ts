import type { Finding } from "../finding.ts";
import type { CoordinateSystem } from "./coordinate-system.ts";
import { datumNamed } from "./datum.ts";
import { datumDiffers, datumNotNamed, datumShifted } from "./findings.ts";
import { wordsOf } from "./words.ts";

/**
 * What is to be said when a system's datum is taken for WGS 84: a note with the size of the difference, or none for WGS 84 itself.
 * Findings: `systems/datum-differs`, `systems/datum-shifted`, `systems/datum-not-named`. Sizes: calculation handbook, section 8.3.
 */
export function datumNote(system: CoordinateSystem): readonly Finding[] {
  if (system.kind === "local" || system.datum === "WGS 84") return [];
  const datum = system.datum === null ? null : datumNamed(system.datum);
  // NAD83 was laid beside the earth's middle; the others went off with their continents, some centimetres a year.
  if (datum !== null) {
    return [
      datum.accuracy_m === null
        ? datumDiffers(datum.name, datum.name.startsWith("NAD83") ? 1 : 0, 2)
        : datumShifted(datum.name, datum.accuracy_m),
    ];
  }
  const words = wordsOf(system.definition);
  if (words.get("datum") === "WGS84" || words.get("nadgrids") === "@null") return [];
  return [datumNotNamed(system.name)];
}
