import type { Geometry, Position } from "geojson";
import { digits } from "../../rounding.ts";

/** A geometry as an element of KML; no space behind a comma, for there a new place begins. Lines follow the ground. */
export function kmlGeometry(geometry: Geometry): string {
  switch (geometry.type) {
    case "Point":
      return `<Point>${coordinates([geometry.coordinates])}</Point>`;
    case "LineString":
      return `<LineString><tessellate>1</tessellate>${coordinates(geometry.coordinates)}</LineString>`;
    case "Polygon": {
      const [outer = [], ...holes] = geometry.coordinates;
      const ring = (places: readonly Position[]) => `<LinearRing>${coordinates(places)}</LinearRing>`;
      return [
        `<Polygon><tessellate>1</tessellate><outerBoundaryIs>${ring(outer)}</outerBoundaryIs>`,
        ...holes.map((hole) => `<innerBoundaryIs>${ring(hole)}</innerBoundaryIs>`),
        "</Polygon>",
      ].join("");
    }
    case "MultiPoint":
      return several(geometry.coordinates.map((place) => ({ type: "Point", coordinates: place })));
    case "MultiLineString":
      return several(geometry.coordinates.map((line) => ({ type: "LineString", coordinates: line })));
    case "MultiPolygon":
      return several(geometry.coordinates.map((rings) => ({ type: "Polygon", coordinates: rings })));
    case "GeometryCollection":
      return several(geometry.geometries);
    default:
      return geometry satisfies never;
  }
}

function several(geometries: readonly Geometry[]): string {
  return `<MultiGeometry>${geometries.map(kmlGeometry).join("")}</MultiGeometry>`;
}

function coordinates(places: readonly Position[]): string {
  return `<coordinates>${places.map(tuple).join(" ")}</coordinates>`;
}

function tuple([lon = 0, lat = 0, height]: Position): string {
  const place = `${digits(lon, 8)},${digits(lat, 8)}`;
  return height === undefined ? place : `${place},${digits(height, 4)}`;
}
