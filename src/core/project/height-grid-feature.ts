import type { Feature, Polygon, Position } from "geojson";
import { type LonLat, planePoint } from "../plane/coordinate.ts";
import { createFrame } from "../plane/frame.ts";

/** Heights on a square grid around a place, as of `HeightGrid`. */
export interface GridHeights {
  readonly origin: LonLat;
  readonly columns: number;
  readonly rows: number;
  readonly cell_m: number;
  /** Row by row from the north-west; NaN where it is not known. */
  readonly height_m: Float64Array;
}

/**
 * A grid of heights as a feature of a project: the outline of its places, and the heights in whole centimetres (half a centimetre off at
 * most). `id` must be free in the project, or the id of the grid that it replaces.
 */
export function heightGridFeature(grid: GridHeights, id: string, name: string): Feature<Polygon> {
  const { origin, columns, rows, cell_m, height_m } = grid;
  const frame = createFrame(origin);
  const [east_m, north_m] = [((columns - 1) / 2) * cell_m, ((rows - 1) / 2) * cell_m];
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ] as const;
  const ring = corners.map(([east, north]): Position => {
    const [lon, lat] = frame.toLonLat(planePoint(east * east_m, north * north_m));
    return [degrees(lon), degrees(lat)];
  });
  const heights = Array.from(height_m, (height) => (Number.isNaN(height) ? null : Math.round(100 * height) + 0));
  return {
    type: "Feature",
    id,
    properties: { role: "elevation", name, grid: { columns, rows, cell: cell_m, origin: [...origin], heights } },
    geometry: { type: "Polygon", coordinates: [ring] },
  };
}

/** Coordinates leave with 8 decimals, about a millimetre. */
function degrees(value: number): number {
  return Number(value.toFixed(8));
}
