import type { LonLat } from "../plane/coordinate.ts";
import { member, withMember } from "../project/json-value.ts";
import type { Json, JsonObject } from "../project/project.ts";

/**
 * An object of the file whose bounding box, where it states one, is that of these places (RFC 7946, section 5); heights in it stay as they
 * were. A box that is none, and one across longitude 180, are left alone.
 */
export function withBoundingBox(object: JsonObject, places: () => readonly LonLat[]): JsonObject {
  const stated = member(object, "bbox");
  if (!Array.isArray(stated) || (stated.length !== 4 && stated.length !== 6)) return object;
  const all = places();
  const [west, east] = ends(all.map(([lon]) => lon));
  const [south, north] = ends(all.map(([, lat]) => lat));
  if (!(east - west <= 180) || !Number.isFinite(south + north)) return object;
  const [low, high]: readonly (readonly Json[])[] =
    stated.length === 6 ? [[stated[2] ?? 0], [stated[5] ?? 0]] : [[], []];
  return withMember(object, "bbox", [west, south, ...(low ?? []), east, north, ...(high ?? [])]);
}

function ends(values: readonly number[]): readonly [number, number] {
  return values.reduce<readonly [number, number]>(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}
