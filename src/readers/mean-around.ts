import type { Window } from "./tiff-raster.ts";

/** Cells in hand and how places of the new grid step over them. */
export interface CellsInHand {
  readonly cells: Float64Array;
  readonly window: Window;
  readonly raster: { readonly columns: number; readonly rows: number };
  readonly step: {
    readonly east: readonly [column: number, row: number];
    readonly south: readonly [column: number, row: number];
  };
}

/** More samples than this in each direction change the mean of noise no more. */
const mostSamples = 16;
/** A mean stands for its ground when no more than a quarter of it is missing: on a slope of 10 % that shifts it by 1 % of a cell. */
const leastKnown = 0.75;

/**
 * Height at a place of the file, by column and row in fractions: bilinear between the four cells around it where the new grid is as fine as
 * the file; else the mean of such heights spread evenly over one cell of the new grid, which leaves a plane as it is. NaN outside the
 * middles of the outermost cells, where one of four cells is missing, and where more than a quarter of a mean is.
 */
export function meanAround({ cells, window, raster, step }: CellsInHand): (column: number, row: number) => number {
  const bilinear = bilinearIn(cells, window, raster);
  const samples = (by: readonly [number, number]): number => {
    const cells = Math.hypot(by[0], by[1]);
    return cells < 1.01 ? 1 : Math.min(mostSamples, Math.ceil(2 * cells));
  };
  const [across, down] = [samples(step.east), samples(step.south)];
  if (across === 1 && down === 1) return bilinear;
  return (column, row) => {
    let [sum, known] = [0, 0];
    for (let j = 0; j < down; j++) {
      const south = (j + 0.5) / down - 0.5;
      for (let i = 0; i < across; i++) {
        const east = (i + 0.5) / across - 0.5;
        const height = bilinear(
          column + east * step.east[0] + south * step.south[0],
          row + east * step.east[1] + south * step.south[1],
        );
        if (Number.isNaN(height)) continue;
        sum += height;
        known++;
      }
    }
    return known < leastKnown * across * down ? NaN : sum / known;
  };
}

/** Rounding may put a place on the outermost cells this far outside, in cells. */
const rounding_cells = 1e-6;

function bilinearIn(cells: Float64Array, { west, north, east, south }: Window, raster: CellsInHand["raster"]) {
  const width = east - west;
  const inside = (cell: number, last: number): number =>
    cell < -rounding_cells || cell > last + rounding_cells ? NaN : Math.min(last, Math.max(0, cell));
  return (column: number, row: number): number => {
    const [x, y] = [inside(column, raster.columns - 1) - west, inside(row, raster.rows - 1) - north];
    if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= south - north - 1)) return NaN;
    const [left, top] = [
      Math.min(Math.floor(x), Math.max(0, width - 2)),
      Math.min(Math.floor(y), Math.max(0, south - north - 2)),
    ];
    const [u, v] = [x - left, y - top];
    const at = top * width + left;
    const upper = Number(cells[at]) * (1 - u) + Number(cells[at + 1]) * u;
    const lower = Number(cells[at + width]) * (1 - u) + Number(cells[at + width + 1]) * u;
    return upper * (1 - v) + lower * v;
  };
}
