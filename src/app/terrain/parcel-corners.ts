import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Parcel } from "../../core/project/project.ts";

/** Every corner of the outlines of some parcels, holes left out. */
export function parcelCorners(parcels: readonly Parcel[]): readonly LonLat[] {
  return parcels.flatMap(({ polygons }) => polygons.flatMap(([outline]) => outline ?? []));
}
