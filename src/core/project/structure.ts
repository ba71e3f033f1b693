import { isBbox, isFeature, isLineStringCoor, isMultiPointCoor, isPolygonCoor, isPosition } from "geojson-validation";
import type { Json, JsonObject } from "./project.ts";

/*
 * The first sieve, and the only place that knows the package (LGPL-3: it stays a file of its own in the web build).
 * It passes longitude 500, not-a-numbers and crossing rings, so checks of our own follow. It is fed piece by piece, because its cost grows
 * with the square of the faults it finds; and only with lists of numbers, because it throws on an empty ring and on odd members.
 */

/** What is wrong with a feature apart from its geometry and its bounding box, or null. */
export function featureFault(feature: JsonObject): string | null {
  const { bbox: _, ...members } = feature;
  const geometry = Object.hasOwn(members, "geometry") ? { geometry: null } : {};
  return firstOf(isFeature({ ...members, ...geometry, properties: members.properties ?? null }, true));
}

/** What is wrong with a bounding box, or null. */
export function boxFault(box: Json): string | null {
  return firstOf(isBbox(box, true));
}

export type GeometryPart = "position" | "points" | "line" | "ring";

/** What is wrong with a piece of geometry whose positions hold numbers only, or null. A ring must be closed before. */
export function partFault(part: GeometryPart, coordinates: readonly unknown[]): string | null {
  switch (part) {
    case "position":
      return firstOf(isPosition(coordinates, true));
    case "points":
      return firstOf(isMultiPointCoor(coordinates, true));
    case "line":
      return firstOf(isLineStringCoor(coordinates, true));
    case "ring":
      return coordinates.length === 0 ? "a ring has no positions" : firstOf(isPolygonCoor([coordinates], true));
    default:
      return part satisfies never;
  }
}

function firstOf(faults: readonly string[]): string | null {
  const first = faults[0]?.replace(/^(?:at \d+: )+/, "");
  return first === undefined ? null : first.charAt(0).toLowerCase() + first.slice(1);
}
