import type { Geometry, LineString, Point, Position } from "geojson";
import type { ProjectDocument } from "../core/project/project.ts";
import type { LngLat } from "./placing.ts";

/**
 * What a file holds, as it was drawn, for a project that could not be laid out: so that what is wrong can be seen where it is.
 * The document is as it was read, so every position is checked; what can not be drawn is left out.
 */
export function sketchGeometries(document: ProjectDocument): (LineString | Point)[] {
  return document.features.flatMap(({ geometry }) => (geometry ? strokes(geometry) : []));
}

/** Every drawable position of a document. */
export function sketchPlaces(document: ProjectDocument): LngLat[] {
  return sketchGeometries(document)
    .flatMap((geometry): Position[] => (geometry.type === "Point" ? [geometry.coordinates] : geometry.coordinates))
    .map(([lng = 0, lat = 0]) => [lng, lat]);
}

function strokes(geometry: Geometry): (LineString | Point)[] {
  switch (geometry.type) {
    case "Point":
      return points([geometry.coordinates]);
    case "MultiPoint":
      return points(geometry.coordinates);
    case "LineString":
      return lines([geometry.coordinates]);
    case "MultiLineString":
    case "Polygon":
      return lines(geometry.coordinates);
    case "MultiPolygon":
      return lines(list(geometry.coordinates).flatMap((polygon) => list(polygon)));
    case "GeometryCollection":
      return list(geometry.geometries).flatMap(strokes);
    default:
      return [];
  }
}

function points(positions: readonly Position[]): Point[] {
  return list(positions)
    .filter(isPlace)
    .map((coordinates) => ({ type: "Point", coordinates }));
}

function lines(parts: readonly (readonly Position[])[]): LineString[] {
  return list(parts).flatMap((part): LineString[] => {
    const coordinates = list(part).filter(isPlace);
    return coordinates.length < 2 ? [] : [{ type: "LineString", coordinates }];
  });
}

/** A list that a hostile file may have put something else in the place of. */
function list<T>(value: readonly T[]): readonly T[] {
  return Array.isArray(value) ? value : [];
}

function isPlace(position: unknown): position is Position {
  if (!Array.isArray(position)) return false;
  const [lng, lat]: readonly unknown[] = position;
  return typeof lng === "number" && typeof lat === "number" && Math.abs(lng) <= 360 && Math.abs(lat) <= 85;
}
