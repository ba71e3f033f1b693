import type { CoordinateSystem } from "../../../systems/coordinate-system.ts";
import type { LayerGeometry, Place } from "../../layers/layer.ts";

/*
 * GeoPackage 1.3 (OGC 12-128r17), clause 2.1.3: "GP", version, flags, system, box of lines and areas, then ISO well-known binary, where types with heights are
 * those without plus 1000.
 */
const little = 1;
const withBox = 2;
const point = 1;
const line = 2;
const polygon = 3;
const multiPolygon = 6;
const heights = 1000;

/** West, south, east and north; grows with what is put into it. */
export interface Box {
  west: number;
  south: number;
  east: number;
  north: number;
}

export function emptyBox(): Box {
  return { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
}

/** A place in the numbers of the system. */
type Placed = readonly [x: number, y: number, height_m: number | null];

/**
 * A geometry as it stands in a GeoPackage, areas as MultiPolygon. It has heights where every place of it has one. `whole` is widened by it.
 */
export function geometryBlob(geometry: LayerGeometry, system: CoordinateSystem, srsId: number, whole: Box) {
  const box = emptyBox();
  const placed = ({ at, height_m }: Place): Placed => {
    const [x, y] = system.fromLonLat(at[0], at[1]);
    widen(box, x, y);
    return [x, y, height_m];
  };
  const parts = partsOf(geometry).map((rings) => rings.map((places) => places.map(placed)));
  widen(whole, box.west, box.south);
  widen(whole, box.east, box.north);
  const hasHeights = parts.flat(2).every(([, , height_m]) => height_m !== null);
  const isPoint = geometry.shape === "point";
  const writer = bytesWritten(sizeOf(parts, geometry.shape, hasHeights));
  writer.bytes([0x47, 0x50, 0, little + (isPoint ? 0 : withBox)]);
  writer.whole(srsId);
  if (!isPoint) for (const value of [box.west, box.east, box.south, box.north]) writer.number(value);
  const begin = (type: number): void => {
    writer.bytes([little]);
    writer.whole(type + (hasHeights ? heights : 0));
  };
  const place = ([x, y, height_m]: Placed): void => {
    writer.number(x);
    writer.number(y);
    if (hasHeights) writer.number(height_m ?? 0);
  };
  const places = (all: readonly Placed[]): void => {
    writer.whole(all.length);
    all.forEach(place);
  };
  if (geometry.shape === "area") {
    begin(multiPolygon);
    writer.whole(parts.length);
    for (const rings of parts) {
      begin(polygon);
      writer.whole(rings.length);
      rings.forEach(places);
    }
  } else {
    begin(isPoint ? point : line);
    for (const all of parts.flat()) isPoint ? all.forEach(place) : places(all);
  }
  return { blob: writer.all, hasHeights };
}

/** Polygons with their rings, which end where they began; a point or a line is one part of one. */
function partsOf(geometry: LayerGeometry): readonly (readonly (readonly Place[])[])[] {
  switch (geometry.shape) {
    case "point":
      return [[[geometry.place]]];
    case "line":
      return [[geometry.places]];
    case "area":
      return geometry.polygons.map((rings) => rings.map((ring) => [...ring, ...ring.slice(0, 1)]));
  }
  return geometry satisfies never;
}

function sizeOf(
  parts: readonly (readonly (readonly Placed[])[])[],
  shape: LayerGeometry["shape"],
  hasHeights: boolean,
) {
  const rings = parts.flat();
  const places = rings.reduce((sum, ring) => sum + ring.length, 0) * (hasHeights ? 24 : 16);
  if (shape === "point") return 8 + 5 + places;
  if (shape === "line") return 8 + 32 + 9 + places;
  return 8 + 32 + 9 + 9 * parts.length + 4 * rings.length + places;
}

function widen(box: Box, x: number, y: number): void {
  box.west = Math.min(box.west, x);
  box.east = Math.max(box.east, x);
  box.south = Math.min(box.south, y);
  box.north = Math.max(box.north, y);
}

function bytesWritten(size: number) {
  const all = new Uint8Array(size);
  const view = new DataView(all.buffer);
  let at = 0;
  return {
    all,
    bytes: (values: readonly number[]): void => {
      all.set(values, at);
      at += values.length;
    },
    whole: (value: number): void => {
      view.setInt32(at, value, true);
      at += 4;
    },
    number: (value: number): void => {
      view.setFloat64(at, value, true);
      at += 8;
    },
  };
}
