import type { Geometry, Position } from "geojson";

/** Numbers of one geometry as they stand, before they are degrees. */
const kinds = ["POINT", "LINESTRING", "POLYGON", "MULTIPOINT", "MULTILINESTRING", "MULTIPOLYGON"] as const;
type Kind = (typeof kinds)[number];
type Nested = Position | readonly Nested[];

const deepest = 4;

/**
 * A geometry of well-known text with its numbers as they stand; null when it is none that is read: `POINT Z (1 2 3)`, `MULTIPOLYGON (((…)))`, with
 * "SRID=32610;" before it. Source: OGC 06-103r4, section 7.
 */
export function wktGeometry(text: string): { readonly geometry: Geometry; readonly srid: number | null } | null {
  const [, srid, word = "", dimensions = "", inside] =
    /^\s*(?:SRID=(\d{1,6});)?\s*([A-Z]+)\s*(ZM?|M)?\s*(\(.*\)|EMPTY)\s*$/is.exec(text) ?? [];
  const kind = kinds.find((each) => each === word.toUpperCase());
  if (kind === undefined || inside === undefined || /^empty$/i.test(inside)) return null;
  const reader = { text: inside, at: 0 };
  const nested = listIn(reader, 0, dimensions.toUpperCase());
  if (nested === null || reader.text.slice(reader.at).trim() !== "") return null;
  const geometry = geometryOf(kind, nested);
  return geometry === null ? null : { geometry, srid: srid === undefined ? null : Number(srid) };
}

interface Reading {
  readonly text: string;
  at: number;
}

const blank = /\s*/y;
const numbers = /[^(),]+/y;

function skip(reader: Reading): string {
  blank.lastIndex = reader.at;
  reader.at += blank.exec(reader.text)?.[0].length ?? 0;
  return reader.text.charAt(reader.at);
}

/** What stands between two brackets: positions, or more brackets. */
function listIn(reader: Reading, depth: number, dimensions: string): readonly Nested[] | null {
  if (depth >= deepest || skip(reader) !== "(") return null;
  const items: Nested[] = [];
  for (;;) {
    reader.at++;
    const item = skip(reader) === "(" ? listIn(reader, depth + 1, dimensions) : positionIn(reader, dimensions);
    if (item === null) return null;
    items.push(item);
    const mark = skip(reader);
    if (mark === ")") break;
    if (mark !== ",") return null;
  }
  reader.at++;
  return items;
}

function positionIn(reader: Reading, dimensions: string): Position | null {
  numbers.lastIndex = reader.at;
  const written = numbers.exec(reader.text)?.[0] ?? "";
  reader.at += written.length;
  const all = written.trim().split(/\s+/).map(Number);
  if (all.length < 2 || all.length > 4 || all.some((each) => !Number.isFinite(each))) return null;
  return all.slice(0, dimensions === "M" ? 2 : 3);
}

function geometryOf(kind: Kind, nested: readonly Nested[]): Geometry | null {
  switch (kind) {
    case "POINT": {
      const [at, ...more] = positions(nested) ?? [];
      return at === undefined || more.length > 0 ? null : { type: "Point", coordinates: at };
    }
    case "LINESTRING": {
      const coordinates = positions(nested);
      return coordinates === null || coordinates.length < 2 ? null : { type: "LineString", coordinates };
    }
    case "MULTIPOINT": {
      // Both forms are written: (1 2, 3 4) and ((1 2), (3 4)).
      const coordinates = positions(nested) ?? lists(nested, positions)?.flat() ?? null;
      return coordinates === null ? null : { type: "MultiPoint", coordinates };
    }
    case "POLYGON": {
      const coordinates = lists(nested, positions);
      return coordinates === null || !coordinates.every(isRing) ? null : { type: "Polygon", coordinates };
    }
    case "MULTILINESTRING": {
      const coordinates = lists(nested, positions);
      return coordinates === null ? null : { type: "MultiLineString", coordinates };
    }
    case "MULTIPOLYGON": {
      const coordinates = lists(nested, (each) => lists(each, positions));
      return coordinates === null || !coordinates.flat().every(isRing) ? null : { type: "MultiPolygon", coordinates };
    }
    default:
      return kind satisfies never;
  }
}

function isRing(ring: readonly Position[]): boolean {
  return ring.length >= 4;
}

function positions(nested: readonly Nested[]): Position[] | null {
  const found: Position[] = [];
  for (const each of nested) {
    if (!isPosition(each)) return null;
    found.push(each);
  }
  return found;
}

function lists<T>(nested: readonly Nested[], of: (inner: readonly Nested[]) => T | null): T[] | null {
  const found: T[] = [];
  for (const each of nested) {
    const made = isPosition(each) ? null : of(each);
    if (made === null) return null;
    found.push(made);
  }
  return found;
}

function isPosition(nested: Nested): nested is Position {
  return nested.length > 0 && typeof nested[0] === "number";
}
