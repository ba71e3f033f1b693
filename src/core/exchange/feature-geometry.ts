import type { Geometry, Position } from "geojson";
import { cutArea, cutLine } from "./antimeridian.ts";
import type { LayerGeometry, Place } from "./layers/layer.ts";
import { position, rounded } from "./rounding.ts";

/** Heights leave in tenths of a millimetre. */
const heightDecimals = 4;

/**
 * Points, lines and areas as geometries of RFC 7946: longitude, latitude, height where it is known, 8 decimals of a degree; outer rings
 * counter-clockwise, closed; what crosses the antimeridian is cut there (section 3.1.9).
 */
export function featureGeometry(geometry: LayerGeometry): Geometry {
  switch (geometry.shape) {
    case "point":
      return { type: "Point", coordinates: ordinates(geometry.place) };
    case "line": {
      const lines = cutLine(geometry.places).map((places) => places.map(ordinates));
      const [only] = lines;
      return lines.length === 1 && only !== undefined
        ? { type: "LineString", coordinates: only }
        : { type: "MultiLineString", coordinates: lines };
    }
    case "area": {
      const polygons = cutArea(geometry.polygons).map((rings) => rings.map(closed));
      const [only] = polygons;
      return polygons.length === 1 && only !== undefined
        ? { type: "Polygon", coordinates: only }
        : { type: "MultiPolygon", coordinates: polygons };
    }
    default:
      return geometry satisfies never;
  }
}

function closed(ring: readonly Place[]): Position[] {
  const [first] = ring;
  return [...ring, ...(first === undefined ? [] : [first])].map(ordinates);
}

function ordinates({ at, height_m }: Place): Position {
  return height_m === null ? position(at) : [...position(at), rounded(height_m, heightDecimals)];
}
