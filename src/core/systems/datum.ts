import { datumLines } from "./datum-lines.ts";

/** How places on a datum are turned into WGS 84, and what others call it. */
export interface Datum {
  /** As the EPSG register calls its geographic system: "NAD83(2011)". */
  readonly name: string;
  /** Codes of its geographic systems, in two and in three dimensions. */
  readonly codes: readonly number[];
  /** As ESRI's well-known text calls the geographic system and the datum. */
  readonly esriSystem: string;
  readonly esriDatum: string;
  /** As OGC's well-known text calls the datum. */
  readonly longName: string;
  /** Ellipsoid and shift in the words of proj4. */
  readonly words: string;
  /** How far the shift of the register may be off, metres; null for datums that are taken for WGS 84 as they are. */
  readonly accuracy_m: number | null;
}

function datumOf(line: string): Datum {
  const [name = "", codes = "", esriSystem = "", esriDatum = "", longName = "", words = "", accuracy = ""] =
    line.split("|");
  return {
    name,
    codes: codes.split(" ").map(Number),
    esriSystem: `GCS_${esriSystem === "" ? spelled(name) : esriSystem}`,
    esriDatum: `D_${esriDatum === "" ? (esriSystem === "" ? spelled(name) : esriSystem) : esriDatum}`,
    longName,
    words: words === "" ? "+ellps=GRS80 +towgs84=0,0,0" : words,
    accuracy_m: accuracy === "" ? null : Number(accuracy),
  };
}

/** A name as ESRI's text spells those it has no other word for. */
function spelled(name: string): string {
  return name.replace(/[^A-Za-z0-9]+/g, "_").replace(/_$/, "");
}

let made: readonly Datum[] | null = null;

/** Every datum that can be served without a file of shifts. */
export function datums(): readonly Datum[] {
  made ??= datumLines.trim().split("\n").map(datumOf);
  return made;
}

/** The datum of this name in the register; null when it is not one of ours. */
export function datumNamed(name: string): Datum | null {
  return datums().find((datum) => datum.name === name) ?? null;
}

/** The datum that a well-known text names in any of its usual spellings; null when it is not one of ours. */
export function datumSpelled(name: string): Datum | null {
  const bare = bareName(name);
  if (bare === "") return null;
  return (
    datums().find((each) =>
      [each.name, each.esriDatum, each.esriSystem, each.longName].some((known) => bareName(known) === bare),
    ) ?? null
  );
}

/** Letters, digits and + alone (CH1903 is not CH1903+), without what ESRI puts before and the register behind. */
export function bareName(name: string): string {
  return name
    .replace(/^(D|GCS)_/, "")
    .replace(/ ensemble$/, "")
    .toLowerCase()
    .replace(/[^a-z0-9+]/g, "");
}
