import proj4 from "proj4";
import type { Outcome } from "../outcome.ts";
import { failure, success } from "../outcome.ts";
import { badSystem, unknownSystem } from "./findings.ts";
import { definitionOf } from "./known-systems.ts";

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
  readonly kind: "geographic" | "projected" | "local";
  readonly unit: SystemUnit;
  /** Longitude and latitude, degrees, to the system's own numbers (x east, y north), and back. */
  fromLonLat(lon_deg: number, lat_deg: number): readonly [x: number, y: number];
  toLonLat(x: number, y: number): readonly [lon_deg: number, lat_deg: number];
}

/** The system of an EPSG code, by the list of `known-systems.ts`. Findings: `systems/unknown-system`. */
export function systemOfCode(code: number): Outcome<CoordinateSystem> {
  const known = definitionOf(code);
  if (known === null) return failure([unknownSystem(code)]);
  return success(systemOf(code, `EPSG ${code}, ${known.name}`, known.definition));
}

/** Longitude and latitude on WGS 84: what everything inside is in. */
export const lonLatSystem: CoordinateSystem = {
  code: 4326,
  name: "EPSG 4326, WGS 84",
  definition: "+proj=longlat +datum=WGS84 +no_defs",
  kind: "geographic",
  unit: "deg",
  fromLonLat: (lon_deg, lat_deg) => [lon_deg, lat_deg],
  toLonLat: (lon_deg, lat_deg) => [lon_deg, lat_deg],
};

/**
 * The system that a person states: a proj4 text ("+proj=utm +zone=10 +datum=NAD83"), or "EPSG:26910" when it is in our list. Systems that
 * need a file of shifts are refused, because they would come out metres off without it. Findings: `systems/bad-system`,
 * `systems/unknown-system`.
 */
export function statedSystem(text: string): Outcome<CoordinateSystem> {
  const code = /^\s*(?:epsg:?\s*)?(\d{4,5})\s*$/i.exec(text)?.[1];
  if (code !== undefined) return systemOfCode(Number(code));
  const definition = text.trim();
  if (!/\+proj=\w/.test(definition)) return failure([badSystem(text, "it does not name a projection (+proj=…)")]);
  const grids = /\+nadgrids=(\S+)/.exec(definition)?.[1];
  if (grids !== undefined && grids !== "@null") {
    return failure([badSystem(text, `it needs the file of shifts ${grids}, which is not here`)]);
  }
  try {
    const system = systemOf(null, definition, definition);
    const { lon_deg, lat_deg } = middleOf(definition);
    const [x, y] = system.fromLonLat(lon_deg, lat_deg);
    const [lon, lat] = system.toLonLat(x, y);
    const isSound = Math.abs(lon - lon_deg) < 1e-6 && Math.abs(lat - lat_deg) < 1e-6;
    return isSound ? success(system) : failure([badSystem(text, "it does not lead back to the place it came from")]);
  } catch (problem) {
    return failure([badSystem(text, problem instanceof Error ? problem.message : String(problem))]);
  }
}

function systemOf(code: number | null, name: string, definition: string): CoordinateSystem {
  const converter = proj4("+proj=longlat +datum=WGS84 +no_defs", definition);
  const isGeographic = /\+proj=(longlat|latlong)\b/.test(definition);
  return {
    code,
    name,
    definition,
    kind: isGeographic ? "geographic" : "projected",
    unit: isGeographic ? "deg" : unitOf(definition),
    fromLonLat: (lon_deg, lat_deg) => {
      const [x = NaN, y = NaN] = converter.forward([lon_deg, lat_deg]);
      return [x, y];
    },
    toLonLat: (x, y) => {
      const [lon = NaN, lat = NaN] = converter.inverse([x, y]);
      return [lon, lat];
    },
  };
}

function unitOf(definition: string): SystemUnit {
  const stated = /\+units=(\S+)/.exec(definition)?.[1];
  return stated === "us-ft" || stated === "ft" ? stated : "m";
}

/** A place where the definition should hold: near its own origin. */
function middleOf(definition: string): { readonly lon_deg: number; readonly lat_deg: number } {
  const number = (name: string): number | null => {
    const found = new RegExp(`\\+${name}=(-?[\\d.]+)`).exec(definition)?.[1];
    return found === undefined ? null : Number(found);
  };
  const zone = number("zone");
  const lon_deg = number("lon_0") ?? number("lonc") ?? (zone === null ? 0 : 6 * zone - 183);
  const lat_deg = number("lat_0") ?? number("lat_1") ?? 40;
  const inRange = Math.max(-80, Math.min(80, lat_deg === 0 ? 40 : lat_deg));
  return { lon_deg: lon_deg + 0.5, lat_deg: /\+south\b/.test(definition) ? -Math.abs(inRange) : inRange };
}
