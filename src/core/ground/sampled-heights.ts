import { type Elevation, heightReader } from "./elevation.ts";
import type { PlaneBox } from "./plane-box.ts";

/** Heights at the places of a square lattice in the plane, rows from the south. */
export interface SampledHeights {
  readonly columns: number;
  readonly rows: number;
  readonly west_m: number;
  readonly south_m: number;
  readonly step_m: number;
  /** Row by row; NaN where it is not known. */
  readonly height_m: Float64Array;
}

/** Heights over a box, at places `step_m` apart from its south-west corner until the box is covered. */
export function sampledHeights(elevation: Elevation, box: PlaneBox, step_m: number): SampledHeights {
  const columns = Math.max(2, Math.ceil((box.east_m - box.west_m) / step_m) + 1);
  const rows = Math.max(2, Math.ceil((box.north_m - box.south_m) / step_m) + 1);
  const heightAt = heightReader(elevation);
  const height_m = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const height = heightAt(box.west_m + column * step_m, box.south_m + row * step_m);
      height_m[row * columns + column] = height ?? NaN;
    }
  }
  return { columns, rows, west_m: box.west_m, south_m: box.south_m, step_m, height_m };
}
