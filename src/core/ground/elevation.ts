import type { Finding } from "../finding.ts";
import type { Frame } from "../plane/frame.ts";
import type { HeightGrid, HeightSurface, SpotHeight } from "../project/project.ts";
import { heightsNotUsed, heightsTooFew, onePlane } from "./findings.ts";
import { type GridGround, gridGround, gridHeights } from "./grid-heights.ts";
import { type PlaneGround, planeThrough } from "./plane-through.ts";
import { type TriangleGround, triangleHeights } from "./triangle-heights.ts";
import { trianglesOf } from "./triangles.ts";

/**
 * Heights of the ground over the plane, plain data. Flat ground has the same height everywhere; spot heights are joined by triangles
 * (Delaunay), within which the ground is a plane; a grid is read between its four nearest places (bilinear); a plane is the same
 * everywhere, also outside the heights it was laid through.
 */
export type Elevation = { readonly kind: "flat" } | TriangleGround | GridGround | PlaneGround;

export const flatGround: Elevation = { kind: "flat" };

/**
 * The ground by what the project knows of its heights. One source counts: the grid with the smallest cells (of equals the last), else the
 * spot heights; heights of two surveys are counted from different zeros, and mixed they would make steps. Flat where there is too little.
 * Findings: `ground/heights-too-few`, `ground/heights-not-used`, `ground/one-plane`.
 */
export function elevationOf(
  spots: readonly SpotHeight[],
  frame: Frame,
  grids: readonly HeightGrid[] = [],
  surface: HeightSurface = "triangles",
): { readonly elevation: Elevation; readonly findings: readonly Finding[] } {
  const [first, ...others] = grids;
  if (first !== undefined) {
    const finest = others.reduce((best, grid) => (grid.cell_m <= best.cell_m ? grid : best), first);
    const unused = spots.length + others.length === 0 ? [] : [heightsNotUsed(finest, others.length, spots.length)];
    return { elevation: gridGround(finest, frame), findings: unused };
  }
  if (spots.length === 0) return { elevation: flatGround, findings: [] };
  const xy = new Float64Array(2 * spots.length);
  for (const [i, { at }] of spots.entries()) xy.set(frame.toPlane(at), 2 * i);
  const height_m = Float64Array.from(spots, (spot) => spot.height_m);
  if (surface === "plane") {
    const plane = planeThrough(xy, height_m);
    if (plane === null) return { elevation: flatGround, findings: [heightsTooFew(spots)] };
    return { elevation: plane.ground, findings: [onePlane(spots, plane.slope_ratio, plane.miss_m)] };
  }
  const { triangles, halfedges } = trianglesOf(xy);
  if (triangles.length === 0) return { elevation: flatGround, findings: [heightsTooFew(spots)] };
  return { elevation: { kind: "spot-heights", xy, height_m, triangles, halfedges }, findings: [] };
}

/** The height of the ground at a place, plane metres; null where nothing is known of it: outside the heights nothing is guessed. */
export type HeightAt = (x_m: number, y_m: number) => number | null;

/** Reads heights; quickest for places near the last one. */
export function heightReader(elevation: Elevation): HeightAt {
  switch (elevation.kind) {
    case "flat":
      return () => 0;
    case "spot-heights":
      return triangleHeights(elevation);
    case "grid":
      return gridHeights(elevation);
    case "plane": {
      const { origin_m, east_ratio, north_ratio } = elevation;
      return (x_m, y_m) => origin_m + east_ratio * x_m + north_ratio * y_m;
    }
    default:
      return elevation satisfies never;
  }
}
