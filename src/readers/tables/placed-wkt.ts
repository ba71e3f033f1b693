import type { Geometry, Position } from "geojson";
import { type CoordinateSystem, systemOfCode } from "../../core/systems/coordinate-system.ts";
import { unitLength_m } from "../../core/systems/unit-length.ts";
import { wktGeometry } from "./wkt.ts";

/** The geometry of a cell of well-known text in degrees, or why there is none. Its own SRID counts more than the system. */
export function placedWkt(text: string, stated: CoordinateSystem, isSwapped: boolean): Geometry | string {
  const found = wktGeometry(text);
  if (found === null) return "has no geometry that is read";
  const own = found.srid === null || found.srid === 0 ? null : systemOfCode(found.srid);
  if (own !== null && !own.ok) return "has a geometry in a system that is not known here";
  const system = own?.value ?? stated;
  const unit_m = system.unit === "deg" ? 1 : unitLength_m[system.unit];
  let isPlaced = true;
  const placed = ([x = NaN, y = NaN, height]: Position): Position => {
    const [lon, lat] = isSwapped ? system.toLonLat(y, x) : system.toLonLat(x, y);
    if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) isPlaced = false;
    return height === undefined ? [lon, lat] : [lon, lat, height * unit_m];
  };
  const geometry = withPositions(found.geometry, placed);
  return isPlaced ? geometry : "has numbers that are no place in the system";
}

function withPositions(geometry: Geometry, placed: (position: Position) => Position): Geometry {
  switch (geometry.type) {
    case "Point":
      return { ...geometry, coordinates: placed(geometry.coordinates) };
    case "LineString":
    case "MultiPoint":
      return { ...geometry, coordinates: geometry.coordinates.map(placed) };
    case "Polygon":
    case "MultiLineString":
      return { ...geometry, coordinates: geometry.coordinates.map((line) => line.map(placed)) };
    case "MultiPolygon":
      return { ...geometry, coordinates: geometry.coordinates.map((rings) => rings.map((ring) => ring.map(placed))) };
    case "GeometryCollection":
      return geometry;
    default:
      return geometry satisfies never;
  }
}
