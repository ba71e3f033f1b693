import proj4 from "proj4";
import type { Outcome } from "../outcome.ts";
import { failure, success } from "../outcome.ts";
import { badSystem, gridSystem, unknownSystem } from "./findings.ts";
import { gridDatumOfCode } from "./grid-datums.ts";
import { definitionOf } from "./known-systems.ts";
import { numberOf, wordsOf } from "./words.ts";

/** What the numbers of a system count: degrees, metres, international feet (0.3048 m) or US survey feet (1200/3937 m). */
export type SystemUnit = "deg" | "m" | "ft" | "us-ft";

/** How a file's numbers lie on the earth. */
export interface CoordinateSystem {
  /** Of the EPSG register; null for one that was stated as a definition, and for the local plane of a project. */
  readonly code: number | null;
  /** What to call it: "EPSG 32610, WGS 84 / UTM zone 10 north", or the definition as it was typed. */
  readonly name: string;
  /** In the words of proj4. */
  readonly definition: string;
  /** As the register calls its datum: "NAD83(2011)"; null for one that is not stated by name. */
  readonly datum: string | null;
  readonly kind: "geographic" | "projected" | "local";
  readonly unit: SystemUnit;
  /** Longitude and latitude, degrees, to the system's own numbers (x east, y north), and back. */
  fromLonLat(lon_deg: number, lat_deg: number): readonly [x: number, y: number];
  toLonLat(x: number, y: number): readonly [lon_deg: number, lat_deg: number];
}

/**
 * The system of an EPSG code, by the list of `known-systems.ts`. Findings: `systems/grid-system` for one that would be metres off without a
 * file of shifts, `systems/unknown-system`.
 */
export function systemOfCode(code: number): Outcome<CoordinateSystem> {
  const known = definitionOf(code);
  if (known !== null) return success(systemOf(code, `EPSG ${code}, ${known.name}`, known.definition, known.datum));
  const datum = gridDatumOfCode(code);
  return failure([datum === null ? unknownSystem(code) : gridSystem(`EPSG ${code}`, datum)]);
}

/** Longitude and latitude on WGS 84: what everything inside is in. */
export const lonLatSystem: CoordinateSystem = {
  code: 4326,
  name: "EPSG 4326, WGS 84",
  definition: "+proj=longlat +datum=WGS84 +no_defs",
  datum: "WGS 84",
  kind: "geographic",
  unit: "deg",
  fromLonLat: (lon_deg, lat_deg) => [lon_deg, lat_deg],
  toLonLat: (lon_deg, lat_deg) => [lon_deg, lat_deg],
};

/**
 * The system that a person states: a proj4 text ("+proj=utm +zone=10 +datum=NAD83"), or "EPSG:26910" when it is in our list. Systems that
 * need a file of shifts are refused, because they would come out metres off without it. Findings: `systems/bad-system`,
 * `systems/grid-system`, `systems/unknown-system`.
 */
export function statedSystem(text: string): Outcome<CoordinateSystem> {
  const code = /^\s*(?:epsg[:\s]*)?(\d{4,5})\s*$/i.exec(text)?.[1];
  if (code !== undefined) return systemOfCode(Number(code));
  const definition = text.trim();
  const words = wordsOf(definition);
  if ((words.get("proj") ?? "") === "") return failure([badSystem(text, "it does not name a projection (+proj=…)")]);
  return soundSystem(null, definition, definition, datumWords.get((words.get("datum") ?? "").toLowerCase()) ?? null);
}

/** Datums that a proj4 text may name, by our names; all others stand there by their shift. */
const datumWords: ReadonlyMap<string, string> = new Map([
  ["wgs84", "WGS 84"],
  ["nad83", "NAD83"],
]);

/**
 * A system by its definition in the words of proj4, held against itself: what it gives must lead back. Findings: `systems/bad-system`,
 * `systems/grid-system`.
 */
export function soundSystem(
  code: number | null,
  name: string,
  definition: string,
  datum: string | null,
): Outcome<CoordinateSystem> {
  const words = wordsOf(definition);
  const grids = words.get("nadgrids");
  if (grids !== undefined && grids !== "@null") {
    return failure([badSystem(name, `it needs the file of shifts ${grids}, which is not here`)]);
  }
  if (words.has("geoidgrids")) return failure([badSystem(name, "it needs a file of heights, which is not here")]);
  const namedDatum = (words.get("datum") ?? "WGS84").toLowerCase();
  if (!datumWords.has(namedDatum)) {
    if (gridWords.has(namedDatum)) return failure([gridSystem(name, words.get("datum") ?? "")]);
    return failure([badSystem(name, `write the shift of the datum ${words.get("datum") ?? ""} out as +towgs84=…`)]);
  }
  const units = words.get("units") ?? "m";
  const isOther = words.has("to_meter") || !["m", "ft", "us-ft"].includes(units);
  if (isOther && words.get("proj") !== "longlat") {
    return failure([badSystem(name, "it counts neither metres nor feet nor US survey feet")]);
  }
  try {
    const system = systemOf(code, name, definition, datum);
    const { lon_deg, lat_deg } = middleOf(definition);
    const [x, y] = system.fromLonLat(lon_deg, lat_deg);
    const [lon, lat] = system.toLonLat(x, y);
    const isSound = Math.abs(lon - lon_deg) < 1e-6 && Math.abs(lat - lat_deg) < 1e-6;
    return isSound ? success(system) : failure([badSystem(name, "it does not lead back to the place it came from")]);
  } catch (problem) {
    return failure([badSystem(name, problem instanceof Error ? problem.message : String(problem))]);
  }
}

/** Datums that proj4 has a file of shifts for, or only says it has: without the file it goes on without a shift, and says nothing. */
const gridWords: ReadonlySet<string> = new Set(["nad27", "osgb36", "potsdam", "nzgd49"]);

/** A system whose definition is known to be sound. */
function systemOf(code: number | null, name: string, definition: string, datum: string | null): CoordinateSystem {
  const converter = proj4("+proj=longlat +datum=WGS84 +no_defs", withOrigin(definition));
  const words = wordsOf(definition);
  const isGeographic = /^(longlat|latlong|lonlat|latlon)$/.test(words.get("proj") ?? "");
  const hasAxes = words.has("axis");
  const fromLonLat = (lon_deg: number, lat_deg: number) => pair(() => converter.forward([lon_deg, lat_deg], hasAxes));
  const toLonLat = (x: number, y: number) => pair(() => converter.inverse([x, y], hasAxes));
  // What proj4 gives back of a shifted datum or an equal area plane is up to 7 mm off; once more with what is missing leads home.
  const isLoose = /[1-9]/.test(words.get("towgs84") ?? "") || words.get("proj") === "laea";
  const ledHome = (x: number, y: number) => {
    const [east, north] = fromLonLat(...toLonLat(x, y));
    return toLonLat(2 * x - east, 2 * y - north);
  };
  return {
    code,
    name,
    definition,
    datum,
    kind: isGeographic ? "geographic" : "projected",
    unit: isGeographic ? "deg" : unitOf(words.get("units")),
    fromLonLat,
    toLonLat: isLoose ? ledHome : toLonLat,
  };
}

/** For some projections proj4 takes a missing origin for no number, where it stands for 0. */
function withOrigin(definition: string): string {
  const words = wordsOf(definition);
  if (words.get("proj") === "utm") return definition;
  const missing = ["lat_0", "lon_0", "x_0", "y_0"].filter(
    (name) => !words.has(name) && !(name === "lon_0" && words.has("lonc")),
  );
  return `${definition}${missing.map((name) => ` +${name}=0`).join("")}`;
}

/** Where there is no answer proj4 throws for one projection and gives nothing for another; here it is no number. */
function pair(convert: () => readonly number[]): readonly [number, number] {
  try {
    const [x = NaN, y = NaN] = convert();
    return [x, y];
  } catch {
    return [NaN, NaN];
  }
}

function unitOf(stated: string | undefined): SystemUnit {
  return stated === "us-ft" || stated === "ft" ? stated : "m";
}

/** A place where the definition should hold: near its own origin. */
function middleOf(definition: string): { readonly lon_deg: number; readonly lat_deg: number } {
  const words = wordsOf(definition);
  const zone = numberOf(words, ["zone"], NaN);
  const lon_deg = numberOf(words, ["lon_0", "lonc"], Number.isNaN(zone) ? 0 : 6 * zone - 183);
  const lat_deg = numberOf(words, ["lat_0", "lat_1"], 40);
  const inRange = Math.max(-80, Math.min(80, lat_deg === 0 ? 40 : lat_deg));
  return { lon_deg: lon_deg + 0.5, lat_deg: words.has("south") ? -Math.abs(inRange) : inRange };
}
