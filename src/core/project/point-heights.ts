import { isJsonObject, member } from "./json-value.ts";
import type { Json } from "./project.ts";

/** The third number of every point of a geometry that was found sound, in reading order; null where a position has none. */
export function pointHeights(geometry: Json): readonly (number | null)[] {
  if (!isJsonObject(geometry)) return [];
  const coordinates = member(geometry, "coordinates") ?? null;
  switch (member(geometry, "type")) {
    case "Point":
      return Array.isArray(coordinates) && coordinates.length > 0 ? [heightIn(coordinates)] : [];
    case "MultiPoint":
      return listOf(coordinates).map(heightIn);
    case "GeometryCollection":
      return listOf(member(geometry, "geometries") ?? null).flatMap(pointHeights);
    default:
      return [];
  }
}

function heightIn(position: Json): number | null {
  const height = Array.isArray(position) ? position[2] : undefined;
  return typeof height === "number" ? height : null;
}

function listOf(value: Json): readonly Json[] {
  return Array.isArray(value) ? value : [];
}
