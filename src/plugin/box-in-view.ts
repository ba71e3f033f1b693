import type { Map as MapLibreMap } from "maplibre-gl";
import { type MercatorPoint, mercator } from "./mercator.ts";
import { nearLongitude } from "./placing.ts";
import type { OffsetBox } from "./row-buffers.ts";

/** What of the map is in view, and a little more for what is drawn around a point, as offsets from an origin. */
export function boxInView(map: MapLibreMap, origin: MercatorPoint): OffsetBox {
  const bounds = map.getBounds();
  const origin_deg = origin.x * 360 - 180;
  const northWest = mercator(nearLongitude(bounds.getWest(), origin_deg), bounds.getNorth());
  const southEast = mercator(nearLongitude(bounds.getEast(), origin_deg), bounds.getSouth());
  const more = (southEast.x - northWest.x) * 0.05;
  return {
    west: northWest.x - origin.x - more,
    north: northWest.y - origin.y - more,
    east: southEast.x - origin.x + more,
    south: southEast.y - origin.y + more,
  };
}
