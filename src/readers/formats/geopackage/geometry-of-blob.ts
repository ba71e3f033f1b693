import type { Geometry, Position } from "geojson";
import { nestedRingsOrNone } from "../../nested-rings.ts";

/** A geometry in the numbers of the file with its system, or half a sentence that says why it is none; null for an empty one. */
export type BlobShape = { readonly geometry: Geometry; readonly srsId: number } | string | null;

const mostNested = 8;
const cutOff = "it is cut off, or says that it is longer than it is";

/**
 * A geometry of a GeoPackage (OGC 12-128r17, clause 2.1.3): its header, then well-known binary, ISO's or the older one with flags. Measures are
 * left. Every count is held against the bytes that are there.
 */
export function geometryOfBlob(blob: Uint8Array): BlobShape {
  if (blob.length < 8 || blob[0] !== 0x47 || blob[1] !== 0x50) return "it does not begin like a geometry";
  const view = new DataView(blob.buffer, blob.byteOffset, blob.byteLength);
  const flags = blob[3] ?? 0;
  if ((flags & 0x20) !== 0) return "it is of an extension that is not read";
  const box_bytes = [0, 32, 48, 48, 64][(flags >> 1) & 7];
  if (box_bytes === undefined) return "its header is damaged";
  if ((flags & 0x10) !== 0) return null;
  const srsId = view.getInt32(4, (flags & 1) === 1);
  const reading = { view, at: 8 + box_bytes };
  try {
    const geometry = shapeAt(reading, 0);
    return geometry === null || typeof geometry === "string" ? geometry : { geometry, srsId };
  } catch (problem) {
    // What reads bytes complains like this when there are none left.
    if (problem instanceof RangeError) return cutOff;
    throw problem;
  }
}

interface Reading {
  readonly view: DataView;
  at: number;
}

function shapeAt(reading: Reading, depth: number): Geometry | string | null {
  if (depth > mostNested) return "it is nested too deep";
  const { view } = reading;
  const isLittle = view.getUint8(reading.at) === 1;
  const code = view.getUint32(reading.at + 1, isLittle);
  reading.at += 5;
  // Older writers mark heights and measures by the two highest bits, ISO by thousands.
  const plain = code & 0x0fffffff;
  const thousands = Math.floor(plain / 1000);
  const hasZ = (code & 0x80000000) !== 0 || thousands === 1 || thousands === 3;
  const hasM = (code & 0x40000000) !== 0 || thousands === 2 || thousands === 3;
  const read: Numbers = { reading, isLittle, hasZ, numbers: 2 + (hasZ ? 1 : 0) + (hasM ? 1 : 0) };
  switch (plain % 1000) {
    case 1: {
      const [x = NaN, y = NaN, ...rest] = place(read);
      if (Number.isNaN(x) && Number.isNaN(y)) return null;
      return sound({ type: "Point", coordinates: [x, y, ...rest] });
    }
    case 2: {
      const line = places(read);
      return line.length < 2 ? "it has less than two places" : sound({ type: "LineString", coordinates: line });
    }
    case 3:
      return areaOf([rings(read)]);
    case 4:
    case 5:
    case 6:
    case 7:
      return many(read, depth);
    default:
      return `shapes of type ${plain} are not read`;
  }
}

interface Numbers {
  readonly reading: Reading;
  readonly isLittle: boolean;
  readonly hasZ: boolean;
  readonly numbers: number;
}

function place({ reading, isLittle, hasZ, numbers }: Numbers): Position {
  const { view, at } = reading;
  const x = view.getFloat64(at, isLittle);
  const y = view.getFloat64(at + 8, isLittle);
  const height = hasZ ? view.getFloat64(at + 16, isLittle) : NaN;
  reading.at += 8 * numbers;
  return Number.isFinite(height) ? [x, y, height] : [x, y];
}

/** How many follow; more than there is room for is an end of the bytes. */
function count({ reading, isLittle }: Numbers, least_bytes: number): number {
  const { view } = reading;
  const stated = view.getUint32(reading.at, isLittle);
  reading.at += 4;
  if (stated * least_bytes > view.byteLength - reading.at) throw new RangeError(cutOff);
  return stated;
}

function places(read: Numbers): Position[] {
  return Array.from({ length: count(read, 8 * read.numbers) }, () => place(read));
}

function rings(read: Numbers): Position[][] {
  return Array.from({ length: count(read, 4) }, () => places(read));
}

/** The pieces of a shape of several. */
function many(read: Numbers, depth: number): Geometry | string | null {
  const pieces: Geometry[] = [];
  const total = count(read, 5);
  for (let i = 0; i < total; i++) {
    const piece = shapeAt(read.reading, depth + 1);
    if (typeof piece === "string") return piece;
    if (piece !== null) pieces.push(piece);
  }
  return together(pieces);
}

/** Pieces of one kind as one shape of that kind; a mixture stays a collection. */
function together(pieces: readonly Geometry[]): Geometry | string | null {
  if (pieces.length === 0) return null;
  const points = pieces.flatMap((each) => (each.type === "Point" ? [each.coordinates] : []));
  if (points.length === pieces.length) return { type: "MultiPoint", coordinates: points };
  const lines = pieces.flatMap((each) => (each.type === "LineString" ? [each.coordinates] : []));
  if (lines.length === pieces.length) return { type: "MultiLineString", coordinates: lines };
  const areas = pieces.flatMap((each) => (each.type === "Polygon" ? [each.coordinates] : []));
  if (areas.length === pieces.length) return { type: "MultiPolygon", coordinates: areas };
  return { type: "GeometryCollection", geometries: [...pieces] };
}

/** Outlines with their holes, turned as GeoJSON has them. */
function areaOf(polygons: readonly Position[][][]): Geometry | string {
  const nested = nestedRingsOrNone(polygons.flat().filter((ring) => ring.length > 3));
  if (nested === null) return "it has too many rings to tell which lies in which";
  const [only] = nested;
  if (only === undefined) return "it has less than three corners";
  return sound(
    nested.length === 1 ? { type: "Polygon", coordinates: only } : { type: "MultiPolygon", coordinates: [...nested] },
  );
}

function sound(geometry: Geometry): Geometry | string {
  const places =
    geometry.type === "Point"
      ? [geometry.coordinates]
      : geometry.type === "LineString"
        ? geometry.coordinates
        : geometry.type === "Polygon"
          ? geometry.coordinates.flat()
          : geometry.type === "MultiPolygon"
            ? geometry.coordinates.flat(2)
            : [];
  return places.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y)) ? geometry : "its places are no numbers";
}
