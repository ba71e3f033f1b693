import { type LonLat, lonLat } from "../plane/coordinate.ts";
import type { Json } from "../project/project.ts";

/** What is drawn is kept to 9 decimals of a degree: a tenth of a millimetre. */
const decimals = 9;
/** Places this near to each other, in both numbers, are one place: below the last decimal that is written. */
const same_deg = 1e-9;

/** A place as a position of the file: longitude within ±180, 9 decimals. */
export function positionOf([lon_deg, lat_deg]: LonLat): readonly [number, number] {
  const turned = Math.abs(lon_deg) <= 180 ? lon_deg : ((((lon_deg + 180) % 360) + 360) % 360) - 180;
  return [Number(turned.toFixed(decimals)) + 0, Number(lat_deg.toFixed(decimals)) + 0];
}

/** The place of a position that is known to be sound. */
export function placeOf(position: Json | undefined): LonLat {
  const [lon, lat] = Array.isArray(position) ? position : [];
  return lonLat(Number(lon), Number(lat));
}

/** The position at another place; its height, and whatever else follows, stays. */
export function movedTo(position: Json | undefined, at: LonLat): Json {
  const rest: readonly Json[] = Array.isArray(position) ? position.slice(2) : [];
  return [...positionOf(at), ...rest];
}

/** Only longitude and latitude of a position, as they were written. */
export function withoutHeight(position: Json | undefined): Json {
  return Array.isArray(position) ? position.slice(0, 2) : [];
}

/** Are the two one place, but for what the last decimal may differ? */
export function isSamePlace(one: LonLat, other: LonLat): boolean {
  return Math.abs(one[0] - other[0]) <= same_deg && Math.abs(one[1] - other[1]) <= same_deg;
}

/** Is it a place on the globe? */
export function isPlace([lon_deg, lat_deg]: LonLat): boolean {
  return Number.isFinite(lon_deg) && Math.abs(lon_deg) <= 540 && Math.abs(lat_deg) <= 90;
}
