import initGeosJs from "geos-wasm";
import type { Point } from "./parcels.ts";

/** Handle of a geometry that lives in the kernel; give it back with `free`. */
export type Handle = number;

/**
 * An independent geometry kernel (a build of GEOS), for comparison only.
 * Rings go in without their closing point and come out without it.
 */
export interface Geos {
  polygon(rings: readonly (readonly Point[])[]): Handle;
  /** Polygons of one ring each, as one geometry; they may overlap. */
  polygons(rings: readonly (readonly Point[])[]): Handle;
  lines(lines: readonly (readonly [Point, Point])[]): Handle;
  intersection(a: Handle, b: Handle): Handle;
  difference(a: Handle, b: Handle): Handle;
  /** Union of everything in one geometry. */
  union(a: Handle): Handle;
  /** Round buffer; the arcs lie inside the true ones. */
  buffer(a: Handle, distance_m: number, piecesPerQuarter: number): Handle;
  area(a: Handle): number;
  length(a: Handle): number;
  /** Straight pieces of a line geometry; a piece with corners in it is given as its parts. */
  pieces(a: Handle): (readonly [Point, Point])[];
  free(...handles: readonly Handle[]): void;
}

export async function createGeos(): Promise<Geos> {
  const geos = await initGeosJs();
  const memory = geos.Module;

  const read = (wkb: Uint8Array): Handle => {
    const at = memory._malloc(wkb.length);
    memory.HEAPU8.set(wkb, at);
    const handle = geos.GEOSGeomFromWKB_buf(at, wkb.length);
    memory._free(at);
    return checked(handle);
  };
  const measured = (measure: (a: Handle, out: number) => number, a: Handle): number => {
    const at = memory._malloc(8);
    const done = measure(a, at);
    const value = memory.HEAPF64[at / 8];
    memory._free(at);
    if (done !== 1 || value === undefined) throw new Error("the geometry kernel refused to measure");
    return value;
  };

  return {
    polygon: (rings) => read(wkbPolygon(rings)),
    polygons: (rings) =>
      read(
        wkbCollection(
          6,
          rings.map((ring) => wkbPolygon([ring])),
        ),
      ),
    lines: (lines) =>
      read(
        wkbCollection(
          5,
          lines.map((line) => wkbLine(line)),
        ),
      ),
    intersection: (a, b) => checked(geos.GEOSIntersection(a, b)),
    difference: (a, b) => checked(geos.GEOSDifference(a, b)),
    union: (a) => checked(geos.GEOSUnaryUnion(a)),
    buffer: (a, distance_m, piecesPerQuarter) => checked(geos.GEOSBuffer(a, distance_m, piecesPerQuarter)),
    area: (a) => measured((g, out) => geos.GEOSArea(g, out), a),
    length: (a) => measured((g, out) => geos.GEOSLength(g, out), a),
    pieces: (a) => {
      const size = memory._malloc(4);
      const at = geos.GEOSGeomToWKB_buf(a, size);
      const bytes = memory.HEAPU8.slice(at, at + (memory.HEAPU32[size / 4] ?? 0));
      memory._free(size);
      geos.GEOSFree(at);
      return linesOf(new DataView(bytes.buffer));
    },
    free: (...handles) => {
      for (const handle of handles) geos.GEOSGeom_destroy(handle);
    },
  };
}

function checked(handle: number): Handle {
  if (handle === 0) throw new Error("the geometry kernel gave no answer");
  return handle;
}

/** Well-known binary, little endian: byte order, type, then counts and coordinates. */
function wkbLine(points: readonly Point[]): Uint8Array {
  const bytes = new Uint8Array(9 + 16 * points.length);
  const view = header(bytes, 2, points.length);
  writePoints(view, 9, points);
  return bytes;
}

function wkbPolygon(rings: readonly (readonly Point[])[]): Uint8Array {
  const bytes = new Uint8Array(9 + rings.reduce((size, ring) => size + 4 + 16 * (ring.length + 1), 0));
  const view = header(bytes, 3, rings.length);
  let at = 9;
  for (const ring of rings) {
    const closed = [...ring, ...ring.slice(0, 1)];
    view.setUint32(at, closed.length, true);
    at = writePoints(view, at + 4, closed);
  }
  return bytes;
}

function wkbCollection(type: 5 | 6, members: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(9 + members.reduce((size, member) => size + member.length, 0));
  header(bytes, type, members.length);
  let at = 9;
  for (const member of members) {
    bytes.set(member, at);
    at += member.length;
  }
  return bytes;
}

function header(bytes: Uint8Array, type: number, count: number): DataView {
  const view = new DataView(bytes.buffer);
  view.setUint8(0, 1);
  view.setUint32(1, type, true);
  view.setUint32(5, count, true);
  return view;
}

function writePoints(view: DataView, at: number, points: readonly Point[]): number {
  let next = at;
  for (const [x, y] of points) {
    view.setFloat64(next, x, true);
    view.setFloat64(next + 8, y, true);
    next += 16;
  }
  return next;
}

/** Straight pieces of a line, multi-line or collection; points (a row that only touches) and empties are left out. */
function linesOf(view: DataView): (readonly [Point, Point])[] {
  const pieces: (readonly [Point, Point])[] = [];
  let at = 0;
  const geometry = (): void => {
    const type = view.getUint32(at + 1, true);
    at += 5;
    if (type === 1) {
      at += 16;
      return;
    }
    const count = view.getUint32(at, true);
    at += 4;
    if (type !== 2) {
      for (let i = 0; i < count; i++) geometry();
      return;
    }
    let from: Point | null = null;
    for (let i = 0; i < count; i++) {
      const to: Point = [view.getFloat64(at, true), view.getFloat64(at + 8, true)];
      at += 16;
      if (from !== null) pieces.push([from, to]);
      from = to;
    }
  };
  geometry();
  return pieces;
}
