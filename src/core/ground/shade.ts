import type { Elevation } from "./elevation.ts";
import type { PlaneBox } from "./plane-box.ts";
import { sampledHeights } from "./sampled-heights.ts";

/** Light and dark of the ground, cell by cell. */
export interface Shade {
  readonly columns: number;
  readonly rows: number;
  /** Of the middle of the first cell, in the north-west; cells run east, then south. */
  readonly west_m: number;
  readonly north_m: number;
  readonly cell_m: number;
  /** 0 dark to 255 light; NaN where the height of the cell or of one around it is not known. */
  readonly light: Float32Array;
}

/** The usual light of maps: from the north-west, half way up. */
const sunAzimuth_rad = (315 * Math.PI) / 180;
const sunHeight_rad = (45 * Math.PI) / 180;

/**
 * Hill shading over a box: the cosine of the angle between the ground and a light in the north-west at 45 degrees, 0 to 255. Slope by the
 * eight cells around (Horn 1981, "Hill shading and the reflectance map"). All NaN over flat ground of which nothing is known.
 */
export function shade(elevation: Elevation, box: PlaneBox, cell_m: number): Shade {
  const around = {
    west_m: box.west_m - cell_m,
    south_m: box.south_m - cell_m,
    east_m: box.east_m + cell_m,
    north_m: box.north_m + cell_m,
  };
  const { columns: width, rows: height, height_m } = sampledHeights(elevation, around, cell_m);
  const [columns, rows] = [width - 2, height - 2];
  const light = new Float32Array(columns * rows).fill(NaN);
  const isKnown = elevation.kind !== "flat";
  for (let row = 0; isKnown && row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      // Rows of the sampled heights run from the south, those of the shade from the north.
      const at = (height - 2 - row) * width + column + 1;
      const [east_ratio, north_ratio] = hornSlope(height_m, at, width, cell_m);
      light[row * columns + column] = lightOn(east_ratio, north_ratio);
    }
  }
  return { columns, rows, west_m: box.west_m, north_m: box.south_m + (rows - 1) * cell_m, cell_m, light };
}

/** Rise a metre eastward and northward from the eight places around one; rows of `height_m` from the south, NaN when one is not known. */
export function hornSlope(
  height_m: Float64Array,
  at: number,
  columns: number,
  step_m: number,
): readonly [east_ratio: number, north_ratio: number] {
  const z = (right: number, up: number) => Number(height_m[at + right + up * columns]);
  const [northWest, northEast, southWest, southEast] = [z(-1, 1), z(1, 1), z(-1, -1), z(1, -1)];
  const east = northEast + 2 * z(1, 0) + southEast - northWest - 2 * z(-1, 0) - southWest;
  const north = northWest + 2 * z(0, 1) + northEast - southWest - 2 * z(0, -1) - southEast;
  return [east / (8 * step_m), north / (8 * step_m)];
}

function lightOn(east_ratio: number, north_ratio: number): number {
  const [east, north] = [Math.sin(sunAzimuth_rad), Math.cos(sunAzimuth_rad)];
  // Upward normal of the ground (-east, -north, 1) and the direction to the sun.
  const towards = Math.sin(sunHeight_rad) - Math.cos(sunHeight_rad) * (east_ratio * east + north_ratio * north);
  const share = towards / Math.hypot(east_ratio, north_ratio, 1);
  return Number.isNaN(share) ? NaN : 255 * Math.max(0, share);
}
