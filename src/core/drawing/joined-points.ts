import type { Position } from "geojson";
import { foundShape } from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";

/** Corners measured one by one are seldom more: above that points are something else. */
export const mostCorners = 500;

/**
 * The points of some things as one outline through them in their order, the way surveyed corners come in lists; null unless each is a
 * point, and they are from three to `mostCorners`. It is called after their layer; what the points say each for itself is left out.
 */
export function joinedPoints(things: readonly FoundThing[]): FoundThing | null {
  const places: Position[] = [];
  for (const { geometry } of things) {
    const { points, lines, areas } = foundShape(geometry);
    const [point] = points;
    if (point === undefined || points.length > 1 || lines.length + areas.length > 0) return null;
    places.push(point);
  }
  const [first] = places;
  if (first === undefined || places.length < 3 || places.length > mostCorners) return null;
  const layer = things[0]?.layer ?? null;
  return { name: null, layer, geometry: { type: "Polygon", coordinates: [[...places, first]] }, values: [] };
}
