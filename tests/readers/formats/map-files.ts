import { readFileSync } from "node:fs";
import type { Geometry, Position } from "geojson";
import { positionsOf } from "../../../src/core/exchange/bounds.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import type { FoundFeature, ReadingAnswers } from "../../../src/readers/reading.ts";
import { geodesic } from "../../support/geodesic.ts";
import { found } from "../../support/survived.ts";

const folder = "tests/fixtures/exchange/map";

/** A file of the folder as bytes. */
export function mapFile(name: string): Uint8Array {
  return new Uint8Array(readFileSync(`${folder}/${name}`));
}

/** What one of these files holds. */
export function foundIn(name: string, answers: Partial<ReadingAnswers> = {}) {
  return found(name, mapFile(name), answers);
}

/** A feature as the other programs were given it. */
interface Given {
  readonly name: string;
  readonly geometry: Geometry;
  readonly values: ReadonlyMap<string, unknown>;
}

/** The features that the other programs were given, of some kinds of shape. */
export function givenFeatures(...types: readonly Geometry["type"][]): readonly Given[] {
  const { features }: { readonly features: readonly { properties: Record<string, unknown>; geometry: Geometry }[] } =
    JSON.parse(readFileSync(`${folder}/features.geojson`, "utf8"));
  return features
    .filter(({ geometry }) => types.length === 0 || types.includes(geometry.type))
    .map(({ properties: { name, ...values }, geometry }) => ({
      name: String(name),
      geometry,
      values: new Map(Object.entries(values)),
    }));
}

/** How far two geometries of the same corners are apart at most, metres, corner by corner; infinite when they are of another kind. */
export function apart_m(a: Geometry, b: Geometry): number {
  const [from, to] = [positionsOf(a), positionsOf(b)];
  if (a.type !== b.type || from.length !== to.length) return Infinity;
  return Math.max(...from.map((at, i) => geodesic(placed(at), placed(to[i] ?? [])).length_m));
}

function placed([lon = Number.NaN, lat = Number.NaN]: Position) {
  return lonLat(lon, lat);
}

/** A value of a found feature. */
export function valueIn(feature: FoundFeature | undefined, name: string): unknown {
  return feature?.values.find(([each]) => each === name)?.[1];
}
