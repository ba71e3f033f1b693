import { type LonLat, lonLat } from "../core/plane/coordinate.ts";
import { createFrame, type Frame } from "../core/plane/frame.ts";
import { mostGridHeights } from "../core/project/project.ts";
import type { LonLatBox } from "./lon-lat-box.ts";

/** Where the heights of a project's grid are to lie: a square lattice in a local plane around the middle of a box. */
export interface GridPlan {
  readonly origin: LonLat;
  readonly frame: Frame;
  readonly columns: number;
  readonly rows: number;
  readonly cell_m: number;
}

/** Finer than this nobody sees: wheels, feet and trenchers bridge it. */
const finest_m = 0.5;
const factors = [1, 2, 2.5, 5] as const;

/**
 * A lattice over the box: at half the file's cell, so that little is lost by reading it anew, or as fine as the project's file may hold;
 * always a round number of metres.
 */
export function gridPlan(box: LonLatBox, fileCell_m: number): GridPlan {
  const origin = lonLat(rounded((box.west + box.east) / 2), rounded((box.south + box.north) / 2));
  const frame = createFrame(origin);
  let [width_m, height_m] = [0, 0];
  for (const lon of [box.west, (box.west + box.east) / 2, box.east]) {
    for (const lat of [box.south, box.north]) {
      const [x, y] = frame.toPlane(lonLat(lon, lat));
      [width_m, height_m] = [Math.max(width_m, 2 * Math.abs(x)), Math.max(height_m, 2 * Math.abs(y))];
    }
  }
  const wanted_m = Math.max(finest_m, fileCell_m / 2);
  const size = (cell_m: number) => ({
    columns: Math.max(2, Math.ceil(width_m / cell_m) + 1),
    rows: Math.max(2, Math.ceil(height_m / cell_m) + 1),
  });
  const coarser = sizes.filter((cell_m) => cell_m > wanted_m);
  const atMost = sizes.filter((cell_m) => cell_m <= wanted_m).at(-1) ?? finest_m;
  const cell_m =
    [atMost, ...coarser].find((each) => {
      const { columns, rows } = size(each);
      return columns * rows <= mostGridHeights;
    }) ?? 1000;
  return { origin, frame, cell_m, ...size(cell_m) };
}

/** 0.5, 1, 2, 2.5, 5, 10 … 500 m. */
const sizes: readonly number[] = [0.1, 1, 10, 100]
  .flatMap((power) => factors.map((factor) => factor * power))
  .filter((cell_m) => cell_m >= finest_m);

/** About a centimetre. */
function rounded(degrees: number): number {
  return Number(degrees.toFixed(7));
}
