import { featuresAChunk } from "../../format.ts";
import type { Shapes } from "./shapes.ts";

/*
 * ESRI Shapefile Technical Description, July 1998: header page 4, records page 6 to 16, index page 24. Lengths are counted in words of two
 * bytes; shape types with heights are those without plus 10.
 */
const fileCode = 9994;
const version = 1000;
const header_bytes = 100;
const recordHead_bytes = 8;
/** Below -1e38 a measure says that there is none (page 2). */
const noMeasure = -1e39;
const typeOf = { point: 1, line: 3, area: 5 } as const;

/** Whether heights are written: only where every point has one, because a shapefile has no way to leave one out. */
export function hasHeights({ withHeight, xyz }: Shapes): boolean {
  return withHeight > 0 && 3 * withHeight === xyz.length;
}

/** The main file (.shp) of a layer's geometries. */
export function* shpBytes(shapes: Shapes): Generator<Uint8Array> {
  const isZ = hasHeights(shapes);
  yield header(shapes, isZ, header_bytes + lengthOfAll(shapes, isZ));
  let number = 1;
  for (const records of recordsOf(shapes, isZ)) {
    const bytes = new Uint8Array(records.reduce((sum, { length }) => sum + recordHead_bytes + length, 0));
    const view = new DataView(bytes.buffer);
    let at = 0;
    for (const record of records) {
      view.setInt32(at, number++);
      view.setInt32(at + 4, record.length / 2);
      writeShape(view, at + recordHead_bytes, shapes, record, isZ);
      at += recordHead_bytes + record.length;
    }
    yield bytes;
  }
}

/** The index file (.shx): where each record begins and how long it is. */
export function* shxBytes(shapes: Shapes): Generator<Uint8Array> {
  const isZ = hasHeights(shapes);
  yield header(shapes, isZ, header_bytes + 8 * shapes.partsOfShape.length);
  let at = header_bytes;
  for (const records of recordsOf(shapes, isZ)) {
    const view = new DataView(new ArrayBuffer(8 * records.length));
    records.forEach(({ length }, i) => {
      view.setInt32(8 * i, at / 2);
      view.setInt32(8 * i + 4, length / 2);
      at += recordHead_bytes + length;
    });
    yield new Uint8Array(view.buffer);
  }
}

/** Where a shape's parts and points begin in the packed arrays, and how many bytes it takes. */
interface ShapeRecord {
  readonly firstPart: number;
  readonly parts: number;
  readonly firstPoint: number;
  readonly points: number;
  readonly length: number;
}

/** The records, some at a time. */
function* recordsOf({ shape, partsOfShape, pointsOfPart }: Shapes, isZ: boolean): Generator<readonly ShapeRecord[]> {
  let firstPart = 0;
  let firstPoint = 0;
  for (let first = 0; first < partsOfShape.length; first += featuresAChunk) {
    yield Array.from(partsOfShape.subarray(first, first + featuresAChunk), (parts) => {
      let points = 0;
      for (let i = 0; i < parts; i++) points += pointsOfPart[firstPart + i] ?? 0;
      const record = { firstPart, parts, firstPoint, points, length: lengthOf(shape, parts, points, isZ) };
      firstPart += parts;
      firstPoint += points;
      return record;
    });
  }
}

function lengthOfAll({ shape, partsOfShape, pointsOfPart }: Shapes, isZ: boolean): number {
  let part = 0;
  let total = 0;
  for (const parts of partsOfShape) {
    let points = 0;
    for (let i = 0; i < parts; i++) points += pointsOfPart[part++] ?? 0;
    total += recordHead_bytes + lengthOf(shape, parts, points, isZ);
  }
  return total;
}

function lengthOf(shape: Shapes["shape"], parts: number, points: number, isZ: boolean): number {
  if (points === 0) return 4;
  if (shape === "point") return isZ ? 36 : 20;
  return 44 + 4 * parts + 16 * points + (isZ ? 16 + 8 * points : 0);
}

function writeShape(view: DataView, at: number, shapes: Shapes, record: ShapeRecord, isZ: boolean): void {
  const { xyz } = shapes;
  const { firstPoint, points, firstPart, parts } = record;
  // A shape without points is the null shape, 0.
  view.setInt32(at, points === 0 ? 0 : typeOf[shapes.shape] + (isZ ? 10 : 0), true);
  if (points === 0) return;
  let from = 3 * firstPoint;
  if (shapes.shape === "point") {
    view.setFloat64(at + 4, xyz[from] ?? 0, true);
    view.setFloat64(at + 12, xyz[from + 1] ?? 0, true);
    if (!isZ) return;
    view.setFloat64(at + 20, xyz[from + 2] ?? 0, true);
    view.setFloat64(at + 28, noMeasure, true);
    return;
  }
  const box = boxOf(xyz.subarray(from, from + 3 * points));
  box.flat.forEach((value, i) => {
    view.setFloat64(at + 4 + 8 * i, value, true);
  });
  view.setInt32(at + 36, parts, true);
  view.setInt32(at + 40, points, true);
  let start = 0;
  for (let i = 0; i < parts; i++) {
    view.setInt32(at + 44 + 4 * i, start, true);
    start += shapes.pointsOfPart[firstPart + i] ?? 0;
  }
  const xyAt = at + 44 + 4 * parts;
  const zAt = xyAt + 16 * points;
  for (let i = 0; i < points; i++, from += 3) {
    view.setFloat64(xyAt + 16 * i, xyz[from] ?? 0, true);
    view.setFloat64(xyAt + 16 * i + 8, xyz[from + 1] ?? 0, true);
    if (isZ) view.setFloat64(zAt + 16 + 8 * i, xyz[from + 2] ?? 0, true);
  }
  if (!isZ) return;
  view.setFloat64(zAt, box.low, true);
  view.setFloat64(zAt + 8, box.high, true);
}

function header(shapes: Shapes, isZ: boolean, total_bytes: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(header_bytes));
  view.setInt32(0, fileCode);
  view.setInt32(24, total_bytes / 2);
  view.setInt32(28, version, true);
  view.setInt32(32, typeOf[shapes.shape] + (isZ ? 10 : 0), true);
  if (shapes.xyz.length > 0) {
    const { flat, low, high } = boxOf(shapes.xyz);
    [...flat, ...(isZ ? [low, high] : [])].forEach((value, i) => {
      view.setFloat64(36 + 8 * i, value, true);
    });
  }
  return new Uint8Array(view.buffer);
}

/** West, south, east and north of packed points, and their lowest and highest. */
function boxOf(xyz: Float64Array) {
  let [west, south, low] = [Infinity, Infinity, Infinity];
  let [east, north, high] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < xyz.length; i += 3) {
    const x = xyz[i] ?? 0;
    const y = xyz[i + 1] ?? 0;
    const z = xyz[i + 2] ?? 0;
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < south) south = y;
    if (y > north) north = y;
    if (z < low) low = z;
    if (z > high) high = z;
  }
  return { flat: [west, south, east, north], low, high };
}
