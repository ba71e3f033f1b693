import earcut from "earcut";
import type { Plan } from "../core/plan.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import type { Shape } from "../core/project/project.ts";
import { type MercatorPoint, mercator, mercatorOfMetre } from "./mercator.ts";
import { nearLongitude, type Placing } from "./placing.ts";
import { sketchGeometries } from "./sketch-features.ts";
import { thinned } from "./thinned.ts";

export const groundFills = ["planting", "alley", "keep-out"] as const;
export type GroundFill = (typeof groundFills)[number];
export const groundStrokes = ["sketch", "alley", "keep-out", "outline", "edge"] as const;
export type GroundStroke = (typeof groundStrokes)[number];

/** The ground as typed arrays, in offsets from a local origin. */
export interface GroundDrawing {
  readonly origin: MercatorPoint;
  /** x, y of three corners a triangle. */
  readonly fills: Readonly<Record<GroundFill, Float32Array>>;
  /** from x, from y, to x, to y of every piece. */
  readonly strokes: Readonly<Record<GroundStroke, Float32Array>>;
}

/** What a filled area may be off. */
const unseen_m = 0.02;

type Place = readonly [lng_deg: number, lat_deg: number];

/**
 * Areas and lines of the ground for drawing: planting area, cross alleys, obstacles, outlines, edges with a setback of their own.
 * Without a laid-out ground there is only what the file holds, as lines; null when there is nothing at all. While the planting area is
 * not worked out yet, that of the drawing before stays.
 */
export function groundDrawing(
  plan: Plan,
  placing: Placing | null,
  before: GroundDrawing | null = null,
): GroundDrawing | null {
  const { project } = plan;
  const sketch = plan.ground ? [] : sketchGeometries(project.document).flatMap(strokePlaces);
  const start = placing?.lngLat(0, 0) ?? project.parcels[0]?.polygons[0]?.[0]?.[0] ?? sketch[0]?.[0];
  if (!start) return null;
  const origin = mercator(start[0], start[1]);
  const offset = ([lng, lat]: Place): readonly [x: number, y: number] => {
    const at = mercator(nearLongitude(lng, start[0]), lat);
    return [at.x - origin.x, at.y - origin.y];
  };
  const stroke = (lines: readonly (readonly Place[])[]) =>
    new Float32Array(lines.flatMap((line) => segments(line.map(offset))));
  const seen = unseen_m * mercatorOfMetre(start[1]);
  const fill = (polygons: readonly (readonly (readonly Place[])[])[]) =>
    new Float32Array(
      placing ? polygons.flatMap((rings) => triangles(rings.map((ring) => thinned(ring.map(offset), seen)))) : [],
    );
  const outlines = project.parcels.flatMap(({ polygons }) => polygons);
  const alleys = project.crossAlleys.map(({ shape }) => shape);
  const keepOuts = project.keepOuts.map(({ shape }) => shape);
  const planting = (): Float32Array => {
    const polygons = plan.ground?.plantingArea ?? null;
    const isSamePlace = before?.origin.x === origin.x && before.origin.y === origin.y;
    if (polygons === null && plan.ground && before && isSamePlace) return before.fills.planting;
    return fill((polygons ?? []).map((rings) => rings.map((ring) => placing?.lngLats(ring) ?? [])));
  };
  return {
    origin,
    fills: {
      planting: planting(),
      alley: fill(alleys.flatMap(({ areas }) => areas)),
      "keep-out": fill(keepOuts.flatMap(({ areas }) => areas)),
    },
    strokes: {
      sketch: stroke(sketch),
      alley: stroke(alleys.flatMap(({ lines }) => lines)),
      "keep-out": stroke(keepOuts.flatMap(shapeLines)),
      outline: stroke(outlines.flatMap((polygon) => polygon.map(closed))),
      edge: stroke(project.edges.filter(({ setback_m }) => setback_m !== null).map(({ line }) => line)),
    },
  };
}

function strokePlaces(geometry: ReturnType<typeof sketchGeometries>[number]): Place[][] {
  if (geometry.type === "Point") return [];
  return [geometry.coordinates.map(([lng = 0, lat = 0]) => [lng, lat])];
}

function shapeLines({ lines, areas }: Shape): (readonly LonLat[])[] {
  return [...lines, ...areas.flatMap((polygon) => polygon.map(closed))];
}

function closed(ring: readonly LonLat[]): readonly LonLat[] {
  const first = ring[0];
  return first ? [...ring, first] : ring;
}

function segments(places: readonly (readonly [x: number, y: number])[]): number[] {
  return places.slice(1).flatMap((to, i) => [...(places[i] ?? to), ...to]);
}

/** Corners of the triangles that an area is made up of, x and y in turn; rings come without a closing point, the outer one first. */
export function triangles(rings: readonly (readonly (readonly [x: number, y: number])[])[]): number[] {
  const places = rings.flat();
  const holes = rings.slice(1).map((_, i) => rings.slice(0, i + 1).reduce((sum, ring) => sum + ring.length, 0));
  return earcut(places.flat(), holes).flatMap((corner) => [...(places[corner] ?? [])]);
}
