import type { Geometry, Position } from "geojson";

/** Collections in collections: more than any program writes. */
const deepest = 10;

/**
 * A geometry out of a JSON text, as RFC 7946 has it: numbers only, lines of two places or more, rings closed, outer ones counter-clockwise; null when
 * it is none. A third number is kept, more are not. Source: RFC 7946 section 3.1.
 */
export function soundGeometry(json: unknown, depth = 0): Geometry | null {
  if (!isObject(json) || depth > deepest) return null;
  const { type, coordinates } = json;
  switch (type) {
    case "Point": {
      const at = position(coordinates);
      return at === null ? null : { type, coordinates: at };
    }
    case "MultiPoint": {
      const places = all(coordinates, position);
      return places === null ? null : { type, coordinates: places };
    }
    case "LineString": {
      const places = line(coordinates);
      return places === null ? null : { type, coordinates: places };
    }
    case "MultiLineString": {
      const lines = all(coordinates, line);
      return lines === null ? null : { type, coordinates: lines };
    }
    case "Polygon": {
      const rings = polygon(coordinates);
      return rings === null ? null : { type, coordinates: rings };
    }
    case "MultiPolygon": {
      const polygons = all(coordinates, polygon);
      return polygons === null ? null : { type, coordinates: polygons };
    }
    case "GeometryCollection": {
      const geometries = all(json.geometries, (each) => soundGeometry(each, depth + 1));
      return geometries === null ? null : { type, geometries };
    }
    default:
      return null;
  }
}

/** An object of a JSON text, and no list. */
export function isObject(json: unknown): json is { readonly [name: string]: unknown } {
  return typeof json === "object" && json !== null && !Array.isArray(json);
}

function position(json: unknown): Position | null {
  if (!Array.isArray(json)) return null;
  const [x, y, height]: readonly unknown[] = json;
  if (!isNumber(x) || !isNumber(y)) return null;
  return isNumber(height) ? [x, y, height] : [x, y];
}

function line(json: unknown): Position[] | null {
  const places = all(json, position);
  return places === null || places.length < 2 ? null : places;
}

function polygon(json: unknown): Position[][] | null {
  const rings = all(json, ring);
  return rings?.map((each, i) => (isLeft(each) === (i === 0) ? each : [...each].reverse())) ?? null;
}

function ring(json: unknown): Position[] | null {
  const places = all(json, position);
  const [first] = places ?? [];
  const last = places?.at(-1);
  if (places === null || first === undefined || last === undefined) return null;
  const whole = first[0] === last[0] && first[1] === last[1] ? places : [...places, first];
  return whole.length > 3 ? whole : null;
}

/** Every element of a list that is not empty, or null when one of them is none. */
function all<T>(json: unknown, one: (each: unknown) => T | null): T[] | null {
  if (!Array.isArray(json) || json.length === 0) return null;
  const found: T[] = [];
  for (const each of json) {
    const sound = one(each);
    if (sound === null) return null;
    found.push(sound);
  }
  return found;
}

/** Counter-clockwise. */
function isLeft(ring: readonly Position[]): boolean {
  const [x0 = 0, y0 = 0] = ring[0] ?? [];
  let twice = 0;
  ring.forEach(([bx = 0, by = 0], i) => {
    const [ax = 0, ay = 0] = ring.at(i - 1) ?? [];
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  });
  return twice >= 0;
}

function isNumber(json: unknown): json is number {
  return typeof json === "number" && Number.isFinite(json);
}
