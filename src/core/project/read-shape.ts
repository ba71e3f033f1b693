import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { isJsonObject, member, shown } from "./json-value.ts";
import type { Json } from "./project.ts";
import { type GeometryPart, partFault } from "./structure.ts";

/** A geometry as places: rings without their closing position, as they were drawn. */
export interface DrawnShape {
  readonly points: readonly LonLat[];
  readonly lines: readonly (readonly LonLat[])[];
  readonly areas: readonly (readonly (readonly LonLat[])[])[];
}

export interface ShapeReading {
  readonly shape: DrawnShape;
  /** The first place of the shape, whatever it is part of. */
  readonly first: LonLat | null;
  readonly isCollection: boolean;
  readonly hasHeights: boolean;
  /** Last corner of the first ring that did not come back to its beginning. */
  readonly unclosed: LonLat | null;
  /** The first fault of structure, in words. */
  readonly fault: string | null;
  /** Positions that are not two numbers: the first one, counted from 1, what stands there, and how many there are. */
  readonly badPosition: { readonly number: number; readonly found: string; readonly count: number } | null;
}

/** What has been read so far. */
interface Walk {
  readonly points: LonLat[];
  readonly lines: LonLat[][];
  readonly areas: LonLat[][][];
  first: LonLat | null;
  isCollection: boolean;
  hasHeights: boolean;
  unclosed: LonLat | null;
  fault: string | null;
  badPosition: ShapeReading["badPosition"];
  positions: number;
}

/** Reads any GeoJSON geometry (or null) that came out of JSON.parse. Says what is wrong with it, and never throws. */
export function readShape(geometry: Json): ShapeReading {
  const walk: Walk = {
    points: [],
    lines: [],
    areas: [],
    first: null,
    isCollection: false,
    hasHeights: false,
    unclosed: null,
    fault: null,
    badPosition: null,
    positions: 0,
  };
  walkGeometry(walk, geometry);
  const { first, isCollection, hasHeights, unclosed, fault, badPosition } = walk;
  const shape = {
    points: walk.points,
    lines: walk.lines.filter((line) => line.length > 0),
    areas: walk.areas.filter((area) => area.length > 0),
  };
  return { shape, first, isCollection, hasHeights, unclosed, fault, badPosition };
}

/** Every place of a shape. */
export function* placesOf({ points, lines, areas }: DrawnShape): Generator<LonLat> {
  yield* points;
  for (const line of lines) yield* line;
  for (const area of areas) for (const ring of area) yield* ring;
}

function walkGeometry(walk: Walk, value: Json): void {
  if (value === null) return;
  if (!isJsonObject(value)) {
    walk.fault ??= `its geometry is ${shown(value)}`;
    return;
  }
  const type = member(value, "type");
  const coordinates = member(value, type === "GeometryCollection" ? "geometries" : "coordinates");
  switch (type) {
    case "Point":
      walk.points.push(...readPoint(walk, coordinates));
      return;
    case "MultiPoint":
      walk.points.push(...readPiece(walk, "points", coordinates));
      return;
    case "LineString":
      walk.lines.push(readPiece(walk, "line", coordinates));
      return;
    case "MultiLineString":
      for (const line of list(walk, coordinates)) walk.lines.push(readPiece(walk, "line", line));
      return;
    case "Polygon":
      walk.areas.push(readRings(walk, coordinates));
      return;
    case "MultiPolygon":
      for (const area of list(walk, coordinates)) walk.areas.push(readRings(walk, area));
      return;
    case "GeometryCollection":
      walk.isCollection = true;
      for (const each of list(walk, coordinates)) walkGeometry(walk, each);
      return;
    default:
      walk.fault ??= `its geometry has ${type === undefined ? "no type" : `the type ${shown(type)}`}`;
  }
}

/** One place, or none: an empty list of coordinates is how some programs write a point without a place. */
function readPoint(walk: Walk, value: Json | undefined): readonly LonLat[] {
  if (value === undefined) {
    list(walk, value);
    return [];
  }
  if (isList(value) && value.length === 0) return [];
  const place = readPosition(walk, value);
  return place === null ? [] : [place];
}

/** The places of a line or of several points; sieved only when all of its positions are numbers. */
function readPiece(walk: Walk, part: GeometryPart, value: Json | undefined): LonLat[] {
  const positions = list(walk, value);
  const places = readPositions(walk, positions);
  if (places.length === positions.length && value !== undefined) walk.fault ??= partFault(part, positions);
  return places;
}

function readRings(walk: Walk, value: Json | undefined): LonLat[][] {
  return list(walk, value).map((ring) => readRing(walk, ring));
}

/** A ring is closed before it is sieved, so that one left open is no fault; heights may differ where the two ends do not. */
function readRing(walk: Walk, value: Json): LonLat[] {
  const positions = list(walk, value);
  const places = readPositions(walk, positions);
  if (places.length < positions.length) return places;
  const begin = places[0];
  const end = places.at(-1);
  const isClosed =
    places.length > 1 && begin !== undefined && end !== undefined && begin[0] === end[0] && begin[1] === end[1];
  if (!isClosed && end !== undefined) walk.unclosed ??= end;
  const open = isClosed ? positions.slice(0, -1) : positions;
  walk.fault ??= partFault("ring", [...open, ...open.slice(0, 1)]);
  return isClosed ? places.slice(0, -1) : places;
}

function readPositions(walk: Walk, positions: readonly Json[]): LonLat[] {
  const places: LonLat[] = [];
  for (const each of positions) {
    const place = readPosition(walk, each);
    if (place !== null) places.push(place);
  }
  return places;
}

function readPosition(walk: Walk, value: Json): LonLat | null {
  walk.positions++;
  const found = notAPosition(value);
  if (found !== null || !isList(value)) {
    const {
      number,
      found: before,
      count,
    } = walk.badPosition ?? { number: walk.positions, found: found ?? "", count: 0 };
    walk.badPosition = { number, found: before, count: count + 1 };
    return null;
  }
  const place = lonLat(Number(value[0]), Number(value[1]));
  if (value.length > 2) walk.hasHeights = true;
  walk.first ??= place;
  return place;
}

/** What stands where a position should, in words; null when it is one. */
function notAPosition(value: Json): string | null {
  if (!isList(value)) return typeof value === "number" ? `the number ${value} alone` : shown(value);
  if (value.length < 2) return value.length === 0 ? "an empty list" : "one number only";
  const odd = value.find((each) => typeof each !== "number" || !Number.isFinite(each));
  if (odd === undefined) return null;
  return typeof odd === "number" ? "a number too large to be one" : shown(odd);
}

function list(walk: Walk, value: Json | undefined): readonly Json[] {
  if (value !== undefined && isList(value)) return value;
  walk.fault ??=
    value === undefined ? "its geometry has no coordinates" : `its coordinates hold ${shown(value)} in place of a list`;
  return [];
}

function isList(value: Json): value is readonly Json[] {
  return Array.isArray(value);
}
