import type { Position } from "geojson";

/** Sides of outlines that are looked at to tell which of a thing's rings lies in which; more is no outline of ground. */
const mostLooked = 5_000_000;

/**
 * Polygons from closed rings in any order and direction: a ring that lies within another is a hole in it, one within a hole is an outline again.
 * Outer rings come out counter-clockwise, holes clockwise (RFC 7946 section 3.1.6). With more rings than can be told apart each is an outline.
 */
export function nestedRings(rings: readonly Position[][]): readonly Position[][][] {
  return nestedRingsOrNone(rings) ?? rings.map((ring) => [wound(ring, true)]);
}

/** The same; null with more rings than can be told apart. */
export function nestedRingsOrNone(rings: readonly Position[][]): Position[][][] | null {
  const sized = rings
    .map((places) => ({ places, area: Math.abs(doubleArea(places)), box: boxOf(places) }))
    .sort((a, b) => b.area - a.area);
  let looked = 0;
  const depths: number[] = [];
  const polygons = new Map<number, Position[][]>();
  for (const [i, { places, box }] of sized.entries()) {
    let parent = -1;
    // The smallest of the larger ones that it lies in.
    for (let j = i - 1; j >= 0 && parent < 0; j--) {
      const other = sized[j];
      if (++looked > mostLooked) return null;
      if (other === undefined || !isBoxIn(box, other.box)) continue;
      looked += other.places.length;
      if (liesIn(places, other.places)) parent = j;
    }
    const depth = parent < 0 ? 0 : (depths[parent] ?? 0) + 1;
    depths.push(depth);
    if (depth % 2 === 0) polygons.set(i, [wound(places, true)]);
    else polygons.get(parent)?.push(wound(places, false));
  }
  return [...polygons.values()];
}

/** A closed ring counter-clockwise, or clockwise. */
export function wound(ring: Position[], isLeft: boolean): Position[] {
  return doubleArea(ring) > 0 === isLeft ? ring : [...ring].reverse();
}

type Box = readonly [west: number, south: number, east: number, north: number];

function boxOf(places: readonly Position[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x = 0, y = 0] of places) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return [west, south, east, north];
}

function isBoxIn(inner: Box, outer: Box): boolean {
  return inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];
}

/** By the first place that is not on the outline itself; a ring wholly on the outline is taken to lie in it. */
function liesIn(ring: readonly Position[], outline: readonly Position[]): boolean {
  for (const place of ring.slice(0, 50)) {
    const side = sideOf(place, outline);
    if (side !== "on") return side === "in";
  }
  return true;
}

function sideOf([x = 0, y = 0]: Position, outline: readonly Position[]): "in" | "out" | "on" {
  let isIn = false;
  for (let i = 1; i < outline.length; i++) {
    const [ax = 0, ay = 0] = outline[i - 1] ?? [];
    const [bx = 0, by = 0] = outline[i] ?? [];
    const cross = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    const isBeside = x >= Math.min(ax, bx) && x <= Math.max(ax, bx) && y >= Math.min(ay, by) && y <= Math.max(ay, by);
    if (cross === 0 && isBeside) return "on";
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isIn = !isIn;
  }
  return isIn ? "in" : "out";
}

/** Twice the area, positive counter-clockwise. */
function doubleArea(places: readonly Position[]): number {
  const [x0 = 0, y0 = 0] = places[0] ?? [];
  let sum = 0;
  for (let i = 1; i < places.length; i++) {
    const [ax = 0, ay = 0] = places[i - 1] ?? [];
    const [bx = 0, by = 0] = places[i] ?? [];
    sum += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return sum;
}
