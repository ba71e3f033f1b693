import proj4 from "proj4";
import type { Outcome } from "../core/outcome.ts";
import { failure, success } from "../core/outcome.ts";
import { badSystem, unknownSystem } from "./findings.ts";
import { definitionOf } from "./known-systems.ts";

/** How a file's numbers lie on the earth. */
export interface CoordinateSystem {
  /** What to call it: "EPSG 32610, WGS 84 / UTM zone 10 north", or the definition as it was typed. */
  readonly name: string;
  readonly definition: string;
  /** Longitude and latitude, degrees, to the system's own numbers, and back. */
  fromLonLat(lon_deg: number, lat_deg: number): readonly [x: number, y: number];
  toLonLat(x: number, y: number): readonly [lon_deg: number, lat_deg: number];
}

/** The system of an EPSG code, by the short list of `known-systems.ts`. Findings: `readers/unknown-system`. */
export function systemOfCode(code: number): Outcome<CoordinateSystem> {
  const known = definitionOf(code);
  if (known === null) return failure([unknownSystem(code)]);
  return success(systemOf(`EPSG ${code}, ${known.name}`, known.definition));
}

/**
 * The system that a person states: a proj4 text ("+proj=utm +zone=10 +datum=NAD83"), or "EPSG:26910" when it is in our list. Systems that
 * need a file of shifts are refused, because they would come out metres off without it. Findings: `readers/bad-system`,
 * `readers/unknown-system`.
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
    const system = systemOf(definition, definition);
    const { lon_deg, lat_deg } = middleOf(definition);
    const [x, y] = system.fromLonLat(lon_deg, lat_deg);
    const [lon, lat] = system.toLonLat(x, y);
    const isSound = Math.abs(lon - lon_deg) < 1e-6 && Math.abs(lat - lat_deg) < 1e-6;
    return isSound ? success(system) : failure([badSystem(text, "it does not lead back to the place it came from")]);
  } catch (problem) {
    return failure([badSystem(text, problem instanceof Error ? problem.message : String(problem))]);
  }
}

function systemOf(name: string, definition: string): CoordinateSystem {
  const converter = proj4("+proj=longlat +datum=WGS84 +no_defs", definition);
  return {
    name,
    definition,
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
