import type { LonLat } from "../plane/coordinate.ts";
import type { Json, JsonObject, Role } from "../project/project.ts";
import { isSamePlace, placeOf, positionOf } from "./position.ts";

/** What a thing is drawn as. */
export type DrawnKind = "point" | "line" | "area";

/** The shapes in which a role is used; others would be kept in the file, but not read. */
export const shapesOf: Readonly<Record<Role, readonly DrawnKind[]>> = {
  parcel: ["area"],
  block: ["area"],
  edge: ["line"],
  obstacle: ["point", "line", "area"],
  "no-plant": ["point", "line", "area"],
  "cross-alley": ["line", "area"],
  row: ["line"],
  "keep-row": ["point"],
  mark: ["point"],
  source: ["point"],
  "main-line": ["line"],
  elevation: ["point"],
};

export const shapeWords: Readonly<Record<DrawnKind, string>> = { point: "a point", line: "a line", area: "an area" };

const leastCorners = { point: 1, line: 2, area: 3, hole: 3 } as const;

/**
 * Corners as a geometry of the file; what follows on the same place is left out. Rings are closed, outlines counter-clockwise and holes
 * clockwise (RFC 7946, 3.1.6). When there are too few corners it says how many there must be.
 */
export function drawnGeometry(
  shape: DrawnKind | "hole",
  corners: readonly LonLat[],
):
  | { readonly ok: true; readonly geometry: JsonObject; readonly ring: readonly Json[] }
  | { readonly ok: false; readonly least: number } {
  const written = corners.map((corner) => positionOf(corner));
  const isRing = shape === "area" || shape === "hole";
  const apart = written.filter((position, i) => i === 0 || !isSamePosition(position, written[i - 1]));
  const comesBack = isRing && apart.length > 1 && isSamePosition(apart.at(-1), apart[0]);
  const positions = comesBack ? apart.slice(0, -1) : apart;
  const least = leastCorners[shape];
  const [first] = positions;
  if (first === undefined || positions.length < least) return { ok: false, least };
  if (shape === "point") return { ok: true, geometry: { type: "Point", coordinates: first }, ring: [] };
  if (shape === "line") return { ok: true, geometry: { type: "LineString", coordinates: positions }, ring: [] };
  const isClockwise = turn(positions) < 0;
  // The first corner stays the first.
  const ordered = isClockwise === (shape === "hole") ? positions : [first, ...positions.slice(1).reverse()];
  return { ok: true, geometry: { type: "Polygon", coordinates: [[...ordered, first]] }, ring: ordered };
}

function isSamePosition(one: Json | undefined, other: Json | undefined): boolean {
  return isSamePlace(placeOf(one), placeOf(other));
}

/** Positive when the positions go counter-clockwise; longitudes are taken from the first, so that 180 may lie between. */
function turn(positions: readonly (readonly [number, number])[]): number {
  const [lon0, lat0] = positions[0] ?? [0, 0];
  const from = positions.map(([lon, lat]) => [((((lon - lon0 + 180) % 360) + 360) % 360) - 180, lat - lat0] as const);
  return from.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = from[(i + 1) % from.length] ?? [0, 0];
    return sum + x * nextY - nextX * y;
  }, 0);
}
