import type { Feature, Geometry, Polygon as PolygonGeometry, Position } from "geojson";
import type { LonLat } from "../core/plane/coordinate.ts";
import type { Polygon, Project, Shape } from "../core/project/project.ts";
import { type LngLat, nearLongitude, type Placing } from "./placing.ts";

export type GroundKind = "keep-out" | "alley" | "mark" | "source";
export interface GroundProperties {
  readonly kind: GroundKind;
  readonly name: string;
}
export type GroundFeature = Feature<Geometry, GroundProperties>;

/** What has a name or is a point on the ground: obstacles, no-plant features, cross alleys, marks, water sources. */
export function groundFeatures(project: Project, placing: Placing | null): GroundFeature[] {
  const near = (at: LonLat): LngLat => [placing ? nearLongitude(at[0], placing.frame.origin[0]) : at[0], at[1]];
  const feature = (kind: GroundKind, name: string | null, geometry: Geometry): GroundFeature => ({
    type: "Feature",
    properties: { kind, name: name ?? "" },
    geometry,
  });
  return [
    ...project.crossAlleys.flatMap(({ shape, name }) =>
      shapeGeometries(shape, near).map((geometry) => feature("alley", name, geometry)),
    ),
    ...project.keepOuts.flatMap(({ shape, name }) =>
      shapeGeometries(shape, near).map((geometry) => feature("keep-out", name, geometry)),
    ),
    ...project.marks.map(({ at, name }) => feature("mark", name, { type: "Point", coordinates: near(at) })),
    ...project.sources.map(({ at, name }) => feature("source", name, { type: "Point", coordinates: near(at) })),
  ];
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
