import { type Finding, say, unplaced } from "../finding.ts";

/** A coordinate system that is not in our list, or none. */
export function unknownSystem(code: number | null): Finding {
  return unplaced(
    "systems/unknown-system",
    "error",
    code === null
      ? say`The file does not name its coordinate system by a code.`
      : say`The file's coordinate system is EPSG ${String(code)}, which is not known here.`,
    say`A wrong system puts everything on other ground; nothing is guessed.`,
    say`State the system as a proj4 text, such as "+proj=utm +zone=10 +datum=NAD83 +units=m": who made the file can tell you.`,
  );
}

/** A system typed in that is none. */
export function badSystem(text: string, why: string): Finding {
  return unplaced(
    "systems/bad-system",
    "error",
    say`"${text}" cannot be used as a coordinate system: ${why}.`,
    say`Everything would land on other ground.`,
    say`Write it as a proj4 text, such as "+proj=utm +zone=10 +datum=NAD83 +units=m", or as a code such as "EPSG:26910".`,
  );
}
