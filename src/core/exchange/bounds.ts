import type { Geometry, Position } from "geojson";

/** What encloses places, as they come by. */
export interface Bounds {
  add(geometry: Geometry): void;
  /** [west, south, east, north], with the lowest and highest height behind south and north where any is known; null without a place. */
  box(): readonly number[] | null;
}

/** Bounds as RFC 7946 section 5 asks: over the antimeridian west is the larger number. */
export function createBounds(): Bounds {
  const least = { east: Infinity, west: Infinity, lat: Infinity, height: Infinity };
  const most = { east: -Infinity, west: -Infinity, lat: -Infinity, height: -Infinity };
  const place = ([lon = 0, lat = 0, height]: Position): void => {
    const side = lon < 0 ? "west" : "east";
    least[side] = Math.min(least[side], lon);
    most[side] = Math.max(most[side], lon);
    least.lat = Math.min(least.lat, lat);
    most.lat = Math.max(most.lat, lat);
    if (height === undefined) return;
    least.height = Math.min(least.height, height);
    most.height = Math.max(most.height, height);
  };
  return {
    add: (geometry) => positionsOf(geometry).forEach(place),
    box: () => {
      if (!(most.lat >= least.lat)) return null;
      const isOver = most.east - least.west > 180;
      const west = isOver ? least.east : Math.min(least.west, least.east);
      const east = isOver ? most.west : Math.max(most.west, most.east);
      return Number.isFinite(least.height)
        ? [west, least.lat, least.height, east, most.lat, most.height]
        : [west, least.lat, east, most.lat];
    },
  };
}

/** Every position of a geometry, in its order. */
export function positionsOf(geometry: Geometry): readonly Position[] {
  switch (geometry.type) {
    case "Point":
      return [geometry.coordinates];
    case "MultiPoint":
    case "LineString":
      return geometry.coordinates;
    case "MultiLineString":
    case "Polygon":
      return geometry.coordinates.flat();
    case "MultiPolygon":
      return geometry.coordinates.flat(2);
    case "GeometryCollection":
      return geometry.geometries.flatMap(positionsOf);
    default:
      return geometry satisfies never;
  }
}
