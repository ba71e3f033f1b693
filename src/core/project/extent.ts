import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { type DrawnShape, placesOf } from "./read-shape.ts";

/** A box in degrees, longitudes unwrapped. */
export interface Extent {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Metres a degree of latitude is long, and one of longitude at the equator: near enough to tell 20 km from less. */
const degree_m = 111_320;

/** The box around a shape, or null when it has no place. */
export function extentOf(shape: DrawnShape): Extent | null {
  let extent: Extent | null = null;
  for (const [lon, lat] of placesOf(shape)) {
    extent = united(extent, { west: lon, south: lat, east: lon, north: lat });
  }
  return extent;
}

/** The box around two boxes. */
export function united(one: Extent | null, other: Extent): Extent {
  if (one === null) return other;
  return {
    west: Math.min(one.west, other.west),
    south: Math.min(one.south, other.south),
    east: Math.max(one.east, other.east),
    north: Math.max(one.north, other.north),
  };
}

/** The middle of a box. */
export function middleOf({ west, south, east, north }: Extent): LonLat {
  return lonLat((west + east) / 2, (south + north) / 2);
}

/** The longer side of the box, roughly (half a per cent). */
export function width_m(extent: Extent): number {
  const [, lat] = middleOf(extent);
  const east = (extent.east - extent.west) * degree_m * Math.cos((lat * Math.PI) / 180);
  return Math.max(east, (extent.north - extent.south) * degree_m);
}

/** Roughly the distance between two places that are not far apart; longitudes may be a turn apart. */
export function apart_m(one: LonLat, other: LonLat): number {
  const turn = ((one[0] - other[0] + 540) % 360) - 180;
  const east = turn * Math.cos((((one[1] + other[1]) / 2) * Math.PI) / 180);
  return Math.hypot(east, one[1] - other[1]) * degree_m;
}

/** The same shape with every longitude within half a turn of `from_deg`; the very same object when none has to move. */
export function unwrapped(shape: DrawnShape, from_deg: number): DrawnShape {
  let moved = false;
  const line = (places: readonly LonLat[]): readonly LonLat[] =>
    places.map((place) => {
      const turns = Math.round((from_deg - place[0]) / 360);
      if (turns === 0) return place;
      moved = true;
      return lonLat(place[0] + 360 * turns, place[1]);
    });
  const result = {
    points: line(shape.points),
    lines: shape.lines.map(line),
    areas: shape.areas.map((area) => area.map(line)),
  };
  return moved ? result : shape;
}
