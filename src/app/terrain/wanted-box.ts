import type { LonLat } from "../../core/plane/coordinate.ts";
import { nearLongitude } from "../../plugin/placing.ts";
import { type LonLatBox, sharedBox } from "../../readers/lon-lat-box.ts";
import type { Cover } from "./height-messages.ts";

/** Heights are taken so far past the parcels, as a share of their longer side and at least: roads and main lines run there. */
const around_ratio = 0.25;
const leastAround_m = 25;
/** A degree of latitude, about. */
const degree_m = 111_320;

/** The box around some places. */
export function boxAround(corners: readonly LonLat[]): LonLatBox {
  const reference_deg = corners[0]?.[0] ?? 0;
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon_deg, lat_deg] of corners) {
    const lon = nearLongitude(lon_deg, reference_deg);
    [west, east] = [Math.min(west, lon), Math.max(east, lon)];
    [south, north] = [Math.min(south, lat_deg), Math.max(north, lat_deg)];
  }
  return { west, south, east, north };
}

/** The ground that heights are wanted of: the parcels and what lies around them. */
export function wantedBox(parcels: LonLatBox): LonLatBox {
  const perLongitude_m = degree_m * Math.cos(((parcels.south + parcels.north) / 2) * (Math.PI / 180));
  const width_m = (parcels.east - parcels.west) * perLongitude_m;
  const height_m = (parcels.north - parcels.south) * degree_m;
  const around_m = Math.max(leastAround_m, around_ratio * Math.max(width_m, height_m));
  const [across_deg, along_deg] = [around_m / perLongitude_m, around_m / degree_m];
  return {
    west: parcels.west - across_deg,
    south: parcels.south - along_deg,
    east: parcels.east + across_deg,
    north: parcels.north + along_deg,
  };
}

/** How a file's box lies to the parcels'. */
export function coverOf(file: LonLatBox, parcels: LonLatBox): Cover {
  const shared = sharedBox(file, parcels);
  if (shared === null) return "none";
  const isWhole =
    file.west <= parcels.west &&
    file.south <= parcels.south &&
    file.east >= parcels.east &&
    file.north >= parcels.north;
  return isWhole ? "all" : "part";
}
