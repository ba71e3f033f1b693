import { type Finding, quantity, say, unplaced } from "../finding.ts";
import { unitLength_m } from "./unit-length.ts";

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

/** A datum whose places can only be turned into WGS 84 by a file of shifts. */
export function gridSystem(system: string, datum: string): Finding {
  return unplaced(
    "systems/grid-system",
    "error",
    say`${system} is on the datum ${datum}, which needs a file of shifts to be turned into WGS 84.`,
    say`Without that file everything would come out metres off, in some places hundreds; the files are too large to be kept here.`,
    say`Have the file written in WGS 84, or in a newer system of the same country (NAD83, ETRS89, GDA2020): who made it has the shifts.`,
  );
}

/** A datum that is taken for WGS 84 as it is. */
export function datumDiffers(datum: string, least_m: number, most_m: number): Finding {
  const metres = least_m > 0 ? `${least_m} to ${most_m} m` : `up to ${most_m} m`;
  // Whole feet: it is a rough figure, and more digits would be read as knowledge.
  const feet = `${least_m > 0 ? `${Math.round(least_m / unitLength_m.ft)} to ` : ""}${Math.round(most_m / unitLength_m.ft)} ft`;
  return unplaced(
    "systems/datum-differs",
    "note",
    say`Places on ${datum} are taken for WGS 84 as they are; the two are ${metres} (${feet}) apart.`,
    say`The ground moves with its continent and WGS 84 does not; all places are off alike, so lengths, bearings and areas stay right.`,
    say`Before staking, measure two marks with the rover and shift by what they are off.`,
  );
}

/** A datum that is turned into WGS 84 by the shift of the register. */
export function datumShifted(datum: string, accuracy_m: number): Finding {
  return unplaced(
    "systems/datum-shifted",
    accuracy_m > 2 ? "warning" : "note",
    say`Places on ${datum} are turned into WGS 84 by the shift of the EPSG register, which holds to about ${quantity("length", accuracy_m)}.`,
    say`Within one parcel all places are off alike, so lengths, bearings and areas stay right.`,
    say`Before staking, measure two marks with the rover and shift by what they are off.`,
  );
}

/** A definition that names no datum we know. */
export function datumNotNamed(system: string): Finding {
  return unplaced(
    "systems/datum-not-named",
    "warning",
    say`"${system}" does not name a datum that is known here, so its places are taken for WGS 84 as they are.`,
    say`Old datums are up to some hundred metres away from WGS 84.`,
    say`Hold one corner against the map; if it is off, ask who made the file for its EPSG code.`,
  );
}
