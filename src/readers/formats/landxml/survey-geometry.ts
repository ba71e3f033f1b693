import type { Geometry, Position } from "geojson";
import { nestedRings } from "../../nested-rings.ts";
import { placesOfThing, type SurveyPlace, type SurveyThing } from "./survey.ts";

/** Heights that are 0 throughout are none. */
export function withoutFlatHeights(things: readonly SurveyThing[]): readonly SurveyThing[] {
  if (!things.every((thing) => placesOfThing(thing).every(([, , z]) => z === null || z === 0))) return things;
  const flat = ([x, y]: SurveyPlace): SurveyPlace => [x, y, null];
  return things.map((thing): SurveyThing => {
    const { shape } = thing;
    if (shape.kind === "point") return { ...thing, shape: { kind: "point", at: flat(shape.at) } };
    if (shape.kind === "lines") {
      return { ...thing, shape: { kind: "lines", lines: shape.lines.map((line) => line.map(flat)) } };
    }
    return { ...thing, shape: { kind: "area", rings: shape.rings.map((ring) => ring.map(flat)) } };
  });
}

/** What the things reach over; null without a place. */
export function boxOf(things: readonly SurveyThing[]) {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const thing of things) {
    for (const [x, y] of placesOfThing(thing)) {
      [west, south, east, north] = [Math.min(west, x), Math.min(south, y), Math.max(east, x), Math.max(north, y)];
    }
  }
  return east < west ? null : { least: [west, south] as const, most: [east, north] as const };
}

/** A thing's shape on the earth. */
export function geometryOf({ shape }: SurveyThing, place: (at: SurveyPlace) => Position): Geometry {
  switch (shape.kind) {
    case "point":
      return { type: "Point", coordinates: place(shape.at) };
    case "lines": {
      const [first = [], ...more] = shape.lines.map((line) => line.map(place));
      return more.length === 0
        ? { type: "LineString", coordinates: first }
        : { type: "MultiLineString", coordinates: [first, ...more] };
    }
    case "area": {
      const rings = shape.rings.map((ring) => {
        const places = ring.map(place);
        return [...places, ...places.slice(0, 1)];
      });
      const [first = [], ...more] = nestedRings(rings);
      return more.length === 0
        ? { type: "Polygon", coordinates: first }
        : { type: "MultiPolygon", coordinates: [first, ...more] };
    }
    default:
      return shape satisfies never;
  }
}
