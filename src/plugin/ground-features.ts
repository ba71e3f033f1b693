import type { Feature, Geometry, MultiPolygon, Polygon as PolygonGeometry, Position } from "geojson";
import type { Plan } from "../core/plan.ts";
import type { LonLat } from "../core/plane/coordinate.ts";
import type { Polygon, Project, Shape } from "../core/project/project.ts";
import { type LngLat, nearLongitude, type Placing } from "./placing.ts";
import { sketchGeometries } from "./sketch-features.ts";

export type GroundKind = "parcel" | "planting" | "keep-out" | "alley" | "edge" | "mark" | "source" | "sketch";
export interface GroundProperties {
  readonly kind: GroundKind;
  readonly name: string;
}
export type GroundFeature = Feature<Geometry, GroundProperties>;

/** What lies on the ground, for drawing: parcels, planting area, obstacles, alleys, edges with a setback of their own, marks. */
export function groundFeatures(plan: Plan, placing: Placing | null): GroundFeature[] {
  const { project } = plan;
  const features: GroundFeature[] = [];
  const near = (at: LonLat): LngLat => [placing ? nearLongitude(at[0], placing.frame.origin[0]) : at[0], at[1]];
  const add = (kind: GroundKind, name: string | null, geometry: Geometry) =>
    features.push({ type: "Feature", properties: { kind, name: name ?? "" }, geometry });

  if (!plan.ground) for (const stroke of sketchGeometries(project.document)) add("sketch", null, stroke);
  for (const parcel of project.parcels) {
    for (const polygon of parcel.polygons) add("parcel", null, polygonGeometry(polygon, near));
  }
  if (placing) for (const geometry of plantingArea(plan, placing)) add("planting", null, geometry);
  for (const alley of project.crossAlleys)
    for (const part of shapeGeometries(alley.shape, near)) add("alley", alley.name, part);
  for (const keepOut of project.keepOuts)
    for (const part of shapeGeometries(keepOut.shape, near)) add("keep-out", keepOut.name, part);
  addPlaces(project, near, add);
  return features;
}

function addPlaces(
  project: Project,
  near: (at: LonLat) => LngLat,
  add: (kind: GroundKind, name: string | null, geometry: Geometry) => void,
): void {
  for (const edge of project.edges) {
    if (edge.setback_m === null) continue;
    add("edge", edge.name, { type: "LineString", coordinates: edge.line.map(near) });
  }
  for (const mark of project.marks) add("mark", mark.name, { type: "Point", coordinates: near(mark.at) });
  for (const source of project.sources) add("source", source.name, { type: "Point", coordinates: near(source.at) });
}

function plantingArea(plan: Plan, placing: Placing): MultiPolygon[] {
  const polygons = plan.ground?.plantingArea ?? [];
  if (polygons.length === 0) return [];
  const ring = (xy: Float64Array): Position[] => {
    const positions: Position[] = [];
    for (let i = 0; i + 1 < xy.length; i += 2) positions.push(placing.lngLat(xy[i] ?? 0, xy[i + 1] ?? 0));
    return closed(positions);
  };
  return [{ type: "MultiPolygon", coordinates: polygons.map((rings) => rings.map(ring)) }];
}

function shapeGeometries(shape: Shape, near: (at: LonLat) => LngLat): Geometry[] {
  return [
    ...shape.points.map((point): Geometry => ({ type: "Point", coordinates: near(point) })),
    ...shape.lines.map((line): Geometry => ({ type: "LineString", coordinates: line.map(near) })),
    ...shape.areas.map((area) => polygonGeometry(area, near)),
  ];
}

function polygonGeometry(polygon: Polygon, near: (at: LonLat) => LngLat): PolygonGeometry {
  return { type: "Polygon", coordinates: polygon.map((ring) => closed(ring.map(near))) };
}

function closed(positions: Position[]): Position[] {
  const first = positions[0];
  return first ? [...positions, first] : positions;
}
