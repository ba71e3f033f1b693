import type { CoordinateSystem } from "./coordinate-system.ts";
import { type Datum, datumNamed } from "./datum.ts";
import { ellipsoidNamed } from "./ellipsoids.ts";
import { esriProjection } from "./esri-projection.ts";
import { unitLength_m } from "./unit-length.ts";
import { numberOf, type Words, wordsOf } from "./words.ts";

/*
 * Names and order as PROJ 9.1.1 writes them (`projinfo -o WKT1_ESRI`); readers tell a system by its numbers and by the name of its datum.
 */

/**
 * A system as well-known text of the form that stands beside shapefiles (.prj, "WKT 1" in ESRI's spelling). Null where that form cannot
 * tell it: the local plane, and a datum whose shift has no name.
 */
export function esriWkt(system: CoordinateSystem): string | null {
  if (system.kind === "local") return null;
  const words = wordsOf(system.definition);
  const geographic = geographicWkt(system, words);
  if (geographic === null || system.kind === "geographic") return geographic;
  const projection = esriProjection(words);
  if (projection === null || system.unit === "deg") return null;
  if (words.has("axis") && !projection.name.endsWith("South_Orientated")) return null;
  const unit_m = unitLength_m[system.unit];
  const isUtm = words.get("proj") === "utm";
  const east = numberOf(words, ["x_0"], isUtm ? 500_000 : 0);
  const north = numberOf(words, ["y_0"], isUtm && words.has("south") ? 10_000_000 : 0);
  const numbers = [
    ["False_Easting", tidy(east / unit_m)],
    ["False_Northing", tidy(north / unit_m)],
    ...projection.numbers,
  ] as const;
  const parameters = numbers.map(([name, value]) => `PARAMETER["${name}",${written(value)}]`).join(",");
  return `PROJCS["${nameOf(system)}",${geographic},PROJECTION["${projection.name}"],${parameters},${unitWkt[system.unit]}]`;
}

/** ESRI's names of the units, and lengths to all their digits. */
const unitWkt = {
  m: 'UNIT["Meter",1.0]',
  ft: 'UNIT["Foot",0.3048]',
  "us-ft": 'UNIT["Foot_US",0.3048006096012192]',
} as const;

function geographicWkt(system: CoordinateSystem, words: Words): string | null {
  const datum = system.datum === null ? null : datumNamed(system.datum);
  const spheroid = ellipsoidNamed(ellipsoidWord(datum, words));
  const isShifted = /[1-9]/.test(words.get("towgs84") ?? "");
  if (spheroid === null || words.has("pm") || (isShifted && datum === null)) return null;
  const names =
    datum === null
      ? [`GCS_${spheroid.esri}`, `D_Unknown_based_on_${spheroid.esri}_Ellipsoid`]
      : [datum.esriSystem, datum.esriDatum];
  return `GEOGCS["${names[0]}",DATUM["${names[1]}",SPHEROID["${spheroid.esri}",${written(spheroid.a_m)},${written(spheroid.inverseFlattening)}]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]`;
}

function ellipsoidWord(datum: Datum | null, words: Words): string {
  const own = datum === null ? words : wordsOf(datum.words);
  return own.get("ellps") ?? (own.get("datum") === "NAD83" ? "GRS80" : "WGS84");
}

/** "NAD_1983_UTM_Zone_10N" as ESRI has it; other names are those of the register with low lines. */
function nameOf({ name, datum, code }: CoordinateSystem): string {
  if (code === null) return "Stated_System";
  const plain = name.replace(/^EPSG \d+, /, "");
  const known = datum === null ? null : datumNamed(datum);
  const utm = /UTM zone (\d+) (north|south)$/.exec(plain);
  if (utm !== null && known !== null) {
    return `${known.esriDatum.slice(2)}_UTM_Zone_${utm[1]}${utm[2] === "north" ? "N" : "S"}`;
  }
  return plain.replace(/[^A-Za-z0-9]+/g, "_").replace(/_$/, "");
}

/** A false origin in feet comes out of metres with noise behind the ninth digit. */
function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

function written(value: number): string {
  return Number.isInteger(value) ? `${value}.0` : String(value);
}
