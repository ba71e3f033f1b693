import Flatbush from "flatbush";
import { type PlanePoint, planePoint } from "./coordinate.ts";
import { createEdgeIndex, type Edge, type EdgeIndex, type PlaneRings, ringIndex } from "./edge-index.ts";
import { crossingAlong, nearestOnSegment } from "./segment.ts";
import { snap_m } from "./tolerance.ts";

/*
 * Are outlines fit to plan on? In plane metres, with an edge index in place of @turf/kinks: that takes 1.3 s for 10,000 corners
 * (every pair of edges) and does not see an edge that runs back over its neighbour. Tests hold the two against each other.
 */

/** Areas that overlap by less than this only touch: what coordinates of seven decimals may be off. */
const touching_m = 0.01;

/** Twice over: shoelace around the first point, so that it does not drown in the distance from the origin. Positive when counter-clockwise. */
export function signedArea_m2(ring: Float64Array): number {
  const [x0 = 0, y0 = 0] = ring;
  let twice = 0;
  for (let i = 2; i + 3 < ring.length; i += 2) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = ring.subarray(i, i + 4);
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0);
  }
  return twice / 2;
}

/**
 * Places where a ring crosses itself, touches itself (within a micrometre) or runs back over itself, each named once, at most `most`.
 * Repeated points must have been taken out before.
 */
export function selfContacts(ring: Float64Array, most: number): readonly PlanePoint[] {
  const index = ringIndex(ring);
  const places: PlanePoint[] = [];
  for (const edge of index.edges) {
    for (const other of index.near(edge, snap_m)) {
      if (other.number <= edge.number) continue;
      const place = areNeighbours(edge, other, index.edges.length) ? foldBack(edge, other) : contact(edge, other);
      if (place === null || places.some((known) => isSame(known, place))) continue;
      places.push(place);
      if (places.length >= most) return places;
    }
  }
  return places;
}

/** A place of the hole's boundary that lies outside the outer ring by more than they may touch, or null. */
export function placeOutside(hole: Float64Array, outer: Float64Array): PlanePoint | null {
  return boundaryPlace(ringIndex(hole), ringIndex(outer), false);
}

/**
 * A place inside both areas, or null when they are apart or only touch (share an edge or a corner, or overlap by less than 1 cm).
 * Each area is even-odd over its rings.
 */
export function overlapPlace(one: EdgeIndex, other: EdgeIndex): PlanePoint | null {
  return (
    boundaryPlace(one, other, true) ??
    boundaryPlace(other, one, true) ??
    deepPlaces(one).find(([x, y]) => isDeepInside(other, x, y)) ??
    null
  );
}

/** Pairs of areas that overlap, with a place in both; at most `most` pairs. */
export function overlappingPairs(
  areas: readonly PlaneRings[],
  most: number,
): readonly { readonly one: number; readonly other: number; readonly at: PlanePoint }[] {
  if (areas.length < 2) return [];
  const indexes = areas.map((rings) => {
    const [only, ...others] = rings;
    return only !== undefined && others.length === 0 ? ringIndex(only) : createEdgeIndex(rings);
  });
  const tree = new Flatbush(areas.length);
  for (const { box } of indexes) tree.add(...box);
  tree.finish();
  const pairs: { one: number; other: number; at: PlanePoint }[] = [];
  for (const [one, index] of indexes.entries()) {
    for (const other of tree.search(...index.box).sort((a, b) => a - b)) {
      const otherIndex = indexes[other];
      if (other <= one || otherIndex === undefined) continue;
      const at = overlapPlace(index, otherIndex);
      if (at !== null) pairs.push({ one, other, at });
      if (pairs.length >= most) return pairs;
    }
  }
  return pairs;
}

/** A place on the boundary of `line` that lies deep inside (or deep outside) `area`: looked for half-way between its meetings with the area's edges. */
function boundaryPlace(line: EdgeIndex, area: EdgeIndex, inside: boolean): PlanePoint | null {
  const [minX, minY, maxX, maxY] = area.box;
  for (const edge of line.edges) {
    const { px, py, qx, qy } = edge;
    const isApart =
      Math.max(px, qx) < minX || Math.min(px, qx) > maxX || Math.max(py, qy) < minY || Math.min(py, qy) > maxY;
    if (isApart && inside) continue;
    const near = area.near(edge, touching_m);
    // With nothing near it lies on the side of the boundary that the edge before it ends on.
    if (near.length === 0 && edge.number > 0) continue;
    const stops = [0, 1, ...meetings(edge, near)].sort((a, b) => a - b);
    const tried = [0, ...stops.slice(1).map((stop, i) => (stop + (stops[i] ?? 0)) / 2)];
    for (const along of tried) {
      const x = px + along * (qx - px);
      const y = py + along * (qy - py);
      const isMeant = area.isInside(x, y) === inside && !area.isOnBoundary(x, y, touching_m);
      if (isMeant) return planePoint(x, y);
    }
  }
  return null;
}

/** How far along an edge (0 to 1) others meet it: where they cross, and where their corners come near. */
function meetings({ px, py, qx, qy }: Edge, others: readonly Edge[]): readonly number[] {
  return others.flatMap((other) => {
    const crossing = crossingAlong([px, py], [qx, qy], [other.px, other.py], [other.qx, other.qy]);
    const { along, distance_m } = nearestOnSegment(other.px, other.py, px, py, qx, qy);
    return [...(crossing === null ? [] : [crossing]), ...(distance_m <= touching_m ? [along] : [])];
  });
}

function isDeepInside(area: EdgeIndex, x: number, y: number): boolean {
  return area.isInside(x, y) && !area.isOnBoundary(x, y, touching_m);
}

/** Middles of the widest pieces that level lines cut from an area: places well inside it. */
function deepPlaces(area: EdgeIndex): readonly PlanePoint[] {
  const [, minY, , maxY] = area.box;
  return [0.5, 0.31, 0.69, 0.13, 0.87].flatMap((share) => {
    const y = minY + share * (maxY - minY);
    const crossings = area.edges
      .filter(({ py, qy }) => py > y !== qy > y)
      .map(({ px, py, qx, qy }) => px + ((y - py) * (qx - px)) / (qy - py))
      .sort((a, b) => a - b);
    let widest = 0;
    let middle = 0;
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [from = 0, to = 0] = crossings.slice(i, i + 2);
      if (to - from > widest) {
        widest = to - from;
        middle = (from + to) / 2;
      }
    }
    return widest > 0 ? [planePoint(middle, y)] : [];
  });
}

function areNeighbours(edge: Edge, other: Edge, count: number): boolean {
  return other.number - edge.number === 1 || (edge.number === 0 && other.number === count - 1);
}

/** Where one of two edges that share a corner runs back over the other, or null. */
function foldBack(edge: Edge, other: Edge): PlanePoint | null {
  const isNext = other.number - edge.number === 1;
  const [ax, ay] = isNext ? [edge.px, edge.py] : [edge.qx, edge.qy];
  const [bx, by] = isNext ? [other.qx, other.qy] : [other.px, other.py];
  if (isNear(bx, by, edge)) return planePoint(bx, by);
  return isNear(ax, ay, other) ? planePoint(ax, ay) : null;
}

/** Where two edges cross or touch, or null. */
function contact(edge: Edge, other: Edge): PlanePoint | null {
  const { px, py, qx, qy } = edge;
  const along = crossingAlong([px, py], [qx, qy], [other.px, other.py], [other.qx, other.qy]);
  if (along !== null) return planePoint(px + along * (qx - px), py + along * (qy - py));
  if (isNear(other.px, other.py, edge)) return planePoint(other.px, other.py);
  if (isNear(other.qx, other.qy, edge)) return planePoint(other.qx, other.qy);
  if (isNear(px, py, other)) return planePoint(px, py);
  return isNear(qx, qy, other) ? planePoint(qx, qy) : null;
}

function isNear(x: number, y: number, { px, py, qx, qy }: Edge): boolean {
  return nearestOnSegment(x, y, px, py, qx, qy).distance_m <= snap_m;
}

/** Contacts a millimetre apart are one: the two edges at a corner both meet what touches the corner. */
function isSame(a: PlanePoint, b: PlanePoint): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-3;
}
