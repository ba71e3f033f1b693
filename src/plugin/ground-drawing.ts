import { Clipper, TriangulateResult } from "clipper2-ts";
import type { Plan } from "../core/plan.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import type { Polygon, Shape } from "../core/project/project.ts";
import { type MercatorPoint, mercator } from "./mercator.ts";
import { nearLongitude, type Placing } from "./placing.ts";
import { sketchGeometries } from "./sketch-features.ts";

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

type Place = readonly [lng_deg: number, lat_deg: number];

/** Decimals of a metre that the triangles are cut to: a millimetre is nothing on a screen. */
const triangleDecimals = 3;

/**
 * Areas and lines of the ground for drawing: planting area, cross alleys, obstacles, outlines, edges with a setback of their own.
 * Without a laid-out ground there is only what the file holds, as lines; null when there is nothing at all.
 */
export function groundDrawing(plan: Plan, placing: Placing | null): GroundDrawing | null {
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
  const area = (polygons: readonly Polygon[]) =>
    new Float32Array(
      placing ? polygons.flatMap((polygon) => triangles(planeRings(polygon, placing), placing, offset)) : [],
    );
  const outlines = project.parcels.flatMap(({ polygons }) => polygons);
  const alleys = project.crossAlleys.map(({ shape }) => shape);
  const keepOuts = project.keepOuts.map(({ shape }) => shape);
  const planting = plan.ground?.plantingArea ?? [];
  return {
    origin,
    fills: {
      planting: new Float32Array(placing ? planting.flatMap((rings) => triangles(rings, placing, offset)) : []),
      alley: area(alleys.flatMap(({ areas }) => areas)),
      "keep-out": area(keepOuts.flatMap(({ areas }) => areas)),
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

function planeRings(polygon: Polygon, { frame }: Placing): Float64Array[] {
  return polygon.map((ring) => new Float64Array(ring.flatMap((at) => [...frame.toPlane(at)])));
}

/** Corners of the triangles that make up an area; none when it cannot be cut up, then only its outline is seen. */
function triangles(
  rings: readonly Float64Array[],
  placing: Placing,
  offset: (place: Place) => readonly [x: number, y: number],
): number[] {
  const paths = rings.map((xy) =>
    Array.from({ length: xy.length / 2 }, (_, i) => ({ x: xy[2 * i] ?? 0, y: xy[2 * i + 1] ?? 0 })),
  );
  const { result, solution } = Clipper.triangulateD(paths, triangleDecimals);
  if (result !== TriangulateResult.success) return [];
  return solution.flatMap((triangle) => triangle.flatMap(({ x, y }) => [...offset(placing.lngLat(x, y))]));
}
