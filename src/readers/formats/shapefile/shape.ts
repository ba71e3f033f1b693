import type { Geometry, Position } from "geojson";
import { nestedRingsOrNone } from "../../nested-rings.ts";
import type { ShapeRecord } from "./shape-file.ts";

/** A geometry in the numbers of the file, or half a sentence that says why it is none; null for the null shape. */
export type Shape = Geometry | string | null;

/** Measures below this say that there is none (technical description, page 2); some writers say so of heights, too. */
const none = -1e38;

/**
 * The shape of a record (technical description, page 6 to 16): points, lines and outlines, with heights where the type has them; measures
 * are left. What a record says of its size is held against its length.
 */
export function shapeOf(view: DataView, { from, length }: ShapeRecord): Shape {
  const type = view.getInt32(from, true);
  if (type === 0) return null;
  const isZ = type > 10 && type < 20;
  if (type < 0 || type > 30) return type === 31 ? "surfaces are not read" : `shapes of type ${type} are not read`;
  switch (type % 10) {
    case 1:
      return pointOf(view, from, length, isZ);
    case 3:
    case 5:
      return partsOf(view, from, length, isZ, type % 10 === 5);
    case 8:
      return manyOf(view, from, length, isZ);
    default:
      return `shapes of type ${type} are not read`;
  }
}

const tooShort = "it says that it is longer than it is";
const noNumber = "its places are no numbers";

function pointOf(view: DataView, from: number, length: number, isZ: boolean): Shape {
  if (length < (isZ ? 28 : 20)) return tooShort;
  const place = placeAt(view, from + 4, isZ ? from + 20 : null);
  return place === null ? noNumber : { type: "Point", coordinates: place };
}

function manyOf(view: DataView, from: number, length: number, isZ: boolean): Shape {
  const count = length < 40 ? -1 : view.getInt32(from + 36, true);
  const places = placesOf(view, from, length, 40, count, isZ);
  return typeof places === "string" ? places : { type: "MultiPoint", coordinates: places };
}

function partsOf(view: DataView, from: number, length: number, isZ: boolean, isArea: boolean): Shape {
  if (length < 44) return tooShort;
  const count = view.getInt32(from + 36, true);
  const points = view.getInt32(from + 40, true);
  if (count < 0 || 44 + 4 * count > length) return tooShort;
  const places = placesOf(view, from, length, 44 + 4 * count, points, isZ);
  if (typeof places === "string") return places;
  const starts = Array.from({ length: count }, (_, i) => view.getInt32(from + 44 + 4 * i, true));
  const isInOrder = starts.every(
    (start, i) => (i === 0 ? start === 0 : start >= (starts[i - 1] ?? 0)) && start <= points,
  );
  if (!isInOrder) return "its parts are out of order";
  const parts = starts.map((start, i) => places.slice(start, starts[i + 1]));
  return isArea ? areaOf(parts) : lineOf(parts.filter((part) => part.length > 1));
}

function lineOf(parts: readonly Position[][]): Shape {
  const [only] = parts;
  if (only === undefined) return "it has less than two places";
  return parts.length === 1
    ? { type: "LineString", coordinates: only }
    : { type: "MultiLineString", coordinates: [...parts] };
}

function areaOf(rings: readonly Position[][]): Shape {
  // A ring of less than three corners has no ground in it.
  const polygons = nestedRingsOrNone(rings.map(closed).filter((ring) => ring.length > 3));
  if (polygons === null) return "it has too many rings to tell which lies in which";
  const [only] = polygons;
  if (only === undefined) return "it has less than three corners";
  return polygons.length === 1
    ? { type: "Polygon", coordinates: only }
    : { type: "MultiPolygon", coordinates: polygons };
}

/** A ring that ends where it began. */
function closed(ring: Position[]): Position[] {
  const [first, last] = [ring[0], ring[ring.length - 1]];
  const isClosed = first === undefined || last === undefined || (first[0] === last[0] && first[1] === last[1]);
  return isClosed ? ring : [...ring, first];
}

function placesOf(
  view: DataView,
  from: number,
  length: number,
  at: number,
  count: number,
  isZ: boolean,
): Position[] | string {
  const heights = at + 16 * count + 16;
  if (count < 0 || heights - 16 > length || (isZ && heights + 8 * count > length)) return tooShort;
  const places: Position[] = [];
  for (let i = 0; i < count; i++) {
    const place = placeAt(view, from + at + 16 * i, isZ ? from + heights + 8 * i : null);
    if (place === null) return noNumber;
    places.push(place);
  }
  return places;
}

function placeAt(view: DataView, at: number, heightAt: number | null): Position | null {
  const x = view.getFloat64(at, true);
  const y = view.getFloat64(at + 8, true);
  if (!Number.isFinite(x) || !Number.isFinite(y) || x < none || y < none) return null;
  const height = heightAt === null ? NaN : view.getFloat64(heightAt, true);
  return Number.isFinite(height) && height > none ? [x, y, height] : [x, y];
}
