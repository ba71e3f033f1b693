import type { Geometry, Position } from "geojson";
import type { LonLat } from "../plane/coordinate.ts";
import { isPlace, isSamePlace, placeOf } from "./position.ts";
import type { DrawnKind } from "./shape.ts";

/** Points, lines and areas of a found geometry, folded out of collections; rings as they stand in the file. */
export interface FoundShape {
  readonly points: readonly Position[];
  readonly lines: readonly (readonly Position[])[];
  readonly areas: readonly (readonly (readonly Position[])[])[];
}

/** What a found geometry consists of. */
export function foundShape(geometry: Geometry): FoundShape {
  switch (geometry.type) {
    case "Point":
      return { ...nothing, points: geometry.coordinates.length === 0 ? [] : [geometry.coordinates] };
    case "MultiPoint":
      return { ...nothing, points: geometry.coordinates };
    case "LineString":
      return { ...nothing, lines: geometry.coordinates.length === 0 ? [] : [geometry.coordinates] };
    case "MultiLineString":
      return { ...nothing, lines: geometry.coordinates.filter((line) => line.length > 0) };
    case "Polygon":
      return { ...nothing, areas: geometry.coordinates.length === 0 ? [] : [geometry.coordinates] };
    case "MultiPolygon":
      return { ...nothing, areas: geometry.coordinates.filter((area) => area.length > 0) };
    case "GeometryCollection": {
      const parts = geometry.geometries.map(foundShape);
      return {
        points: parts.flatMap(({ points }) => points),
        lines: parts.flatMap(({ lines }) => lines),
        areas: parts.flatMap(({ areas }) => areas),
      };
    }
    default:
      geometry satisfies never;
      return nothing;
  }
}

const nothing: FoundShape = { points: [], lines: [], areas: [] };

/** The kinds that a shape has something of: points, lines, areas. */
export function kindsIn({ points, lines, areas }: FoundShape): readonly DrawnKind[] {
  return [
    ...(areas.length > 0 ? (["area"] as const) : []),
    ...(lines.length > 0 ? (["line"] as const) : []),
    ...(points.length > 0 ? (["point"] as const) : []),
  ];
}

/** Every position of a shape. */
export function positionsIn({ points, lines, areas }: FoundShape): readonly Position[] {
  return [...points, ...lines.flat(), ...areas.flat(2)];
}

/** The first position that is no place on the globe; null when all are places. */
export function strayPosition(shape: FoundShape): Position | null {
  return positionsIn(shape).find((position) => position.length < 2 || !isPlace(placeOf(position))) ?? null;
}

/** Does a line come back to its beginning, with three corners or more between? */
export function isClosedLine(line: readonly Position[]): boolean {
  return line.length > 3 && isSamePlace(placeOf(line[0]), placeOf(line.at(-1)));
}

/** Could a line be an outline: has it three places or more? */
export function couldClose(line: readonly Position[]): boolean {
  return line.length > (isClosedLine(line) ? 3 : 2);
}

/**
 * Lines as areas: each is a ring; one that begins inside an earlier one is a hole of it. Boundaries leave some formats as lines, holes and
 * all.
 */
export function areasOf(lines: readonly (readonly Position[])[]): FoundShape["areas"] {
  const areas: (readonly Position[])[][] = [];
  for (const line of lines) {
    const around = areas.find(([outer]) => outer !== undefined && isInside(placeOf(line[0]), outer));
    if (around === undefined) areas.push([line]);
    else around.push(line);
  }
  return areas;
}

/** Even-odd rule in degrees: enough to tell a hole from another field. */
export function isInside([x, y]: LonLat, ring: readonly Position[]): boolean {
  let inside = false;
  for (const [i, position] of ring.entries()) {
    const [x1, y1] = placeOf(position);
    const [x0, y0] = placeOf(ring[(i + ring.length - 1) % ring.length]);
    if (y1 > y !== y0 > y && x < ((x0 - x1) * (y - y1)) / (y0 - y1) + x1) inside = !inside;
  }
  return inside;
}
