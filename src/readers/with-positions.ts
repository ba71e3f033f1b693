import type { Geometry, Position } from "geojson";

/** A geometry with each of its positions put elsewhere. */
export function withPositions(geometry: Geometry, put: (at: Position) => Position): Geometry {
  switch (geometry.type) {
    case "Point":
      return { type: "Point", coordinates: put(geometry.coordinates) };
    case "MultiPoint":
      return { type: "MultiPoint", coordinates: geometry.coordinates.map(put) };
    case "LineString":
      return { type: "LineString", coordinates: geometry.coordinates.map(put) };
    case "MultiLineString":
      return { type: "MultiLineString", coordinates: geometry.coordinates.map((line) => line.map(put)) };
    case "Polygon":
      return { type: "Polygon", coordinates: geometry.coordinates.map((ring) => ring.map(put)) };
    case "MultiPolygon": {
      const coordinates = geometry.coordinates.map((rings) => rings.map((ring) => ring.map(put)));
      return { type: "MultiPolygon", coordinates };
    }
    case "GeometryCollection":
      return { type: "GeometryCollection", geometries: geometry.geometries.map((each) => withPositions(each, put)) };
    default:
      return geometry satisfies never;
  }
}
