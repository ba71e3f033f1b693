import type { Plan } from "../core/plan.ts";
import { type LngLat, nearLongitude } from "./placing.ts";
import { sketchPlaces } from "./sketch-features.ts";

/** South-west and north-east corner of all parcels and standing rows, else of what the file holds; null when there is nothing to see. */
export function planBounds(plan: Plan): readonly [LngLat, LngLat] | null {
  const { project } = plan;
  const places: (readonly [lon_deg: number, lat_deg: number])[] = [
    ...project.parcels.flatMap(({ polygons }) => polygons.flat(2)),
    ...project.givenRows.flatMap(({ ends }) => ends ?? []),
  ];
  if (places.length === 0) places.push(...sketchPlaces(project.document));
  const first = places[0];
  if (!first) return null;
  const reference = plan.ground?.frame.origin[0] ?? first[0];
  let [west, south, east, north] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const [lon, lat] of places) {
    const near = nearLongitude(lon, reference);
    west = Math.min(west, near);
    east = Math.max(east, near);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return [
    [west, south],
    [east, north],
  ];
}
