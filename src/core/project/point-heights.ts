import { isJsonObject, member } from "./json-value.ts";
import type { Json } from "./project.ts";

/** Third numbers of positions; null where a position has none. */
export interface PositionHeights {
  readonly points: readonly (number | null)[];
  readonly lines: readonly (readonly (number | null)[])[];
}

/** The heights of every point, and of every line, of a geometry that was found sound, in reading order. */
export function pointHeights(geometry: Json): PositionHeights {
  const points: (number | null)[] = [];
  const lines: (number | null)[][] = [];
  const walk = (value: Json): void => {
    if (!isJsonObject(value)) return;
    const coordinates = member(value, "coordinates") ?? null;
    switch (member(value, "type")) {
      case "Point":
        if (listOf(coordinates).length > 0) points.push(heightIn(coordinates));
        return;
      case "MultiPoint":
        points.push(...listOf(coordinates).map(heightIn));
        return;
      case "LineString":
        if (listOf(coordinates).length > 0) lines.push(listOf(coordinates).map(heightIn));
        return;
      case "MultiLineString":
        for (const line of listOf(coordinates)) if (listOf(line).length > 0) lines.push(listOf(line).map(heightIn));
        return;
      case "GeometryCollection":
        for (const each of listOf(member(value, "geometries") ?? null)) walk(each);
        return;
      default:
    }
  };
  walk(geometry);
  return { points, lines };
}

function heightIn(position: Json): number | null {
  const height = Array.isArray(position) ? position[2] : undefined;
  return typeof height === "number" ? height : null;
}

function listOf(value: Json): readonly Json[] {
  return Array.isArray(value) ? value : [];
}
