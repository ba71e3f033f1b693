import type { LayerGeometry, Place } from "./layer.ts";

/** Every place of a shape, rings and parts one after another. */
export function placesOf(geometry: LayerGeometry): readonly Place[] {
  switch (geometry.shape) {
    case "point":
      return [geometry.place];
    case "line":
      return geometry.places;
    case "area":
      return geometry.polygons.flat(2);
    default:
      return geometry satisfies never;
  }
}
