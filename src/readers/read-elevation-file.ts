import type { Feature, Polygon } from "geojson";
import type { Finding } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { lonLat, planePoint } from "../core/plane/coordinate.ts";
import { heightGridFeature } from "../core/project/height-grid-feature.ts";
import type { CoordinateSystem } from "../core/systems/coordinate-system.ts";
import { unitLength_m } from "../core/systems/unit-length.ts";
import type { FileBytes } from "./blob-source.ts";
import type { ElevationReading, Following } from "./elevation-file.ts";
import { elsewhere, gaps, impossibleHeights, stopped, tooLargeBlocks, unitDiffers, unreadable } from "./findings.ts";
import { type GridPlan, gridPlan } from "./grid-plan.ts";
import { boxOf, cellOf, openElevation } from "./inspect-elevation-file.ts";
import { sharedBox } from "./lon-lat-box.ts";
import { meanAround } from "./mean-around.ts";
import type { TiffRaster, Window } from "./tiff-raster.ts";

/** Cells that are held at a time: 12 MB, unpacked in a sixth of a second. */
const windowCells = 1_500_000;
/** A block of this many cells cannot be read in part: 400 MB. */
const mostBlockCells = 50_000_000;
const [lowest_m, highest_m] = [-500, 5000];

/**
 * The heights of a GeoTIFF over a box as a feature of the project (see `heightGridFeature`), in metres. Only the cells over the box are
 * read, a strip of ground at a time; the grid is fitted to the size a project may hold, and where it is coarser than the file each of its
 * heights is the mean of the ground around it. Runs in a page, a worker and Node; gives way to others between strips.
 * Findings: those of `openElevation`, `readers/elsewhere`, `readers/gaps`, `readers/unit-differs`, `readers/impossible-heights`,
 * `readers/too-large-blocks`, `readers/unreadable`, `readers/stopped`.
 */
export async function readElevationFile(
  blob: FileBytes,
  reading: ElevationReading,
  following: Following = {},
): Promise<Outcome<Feature<Polygon>>> {
  const { name } = reading;
  const opened = await openElevation(blob, name, reading.system);
  if (!opened.ok) return opened;
  const { raster, system, verticalUnit } = opened.value;
  if (system === null) return failure(opened.findings);
  const findings: Finding[] = [...opened.findings];
  if (verticalUnit !== null && verticalUnit !== reading.verticalUnit) {
    findings.push(unitDiffers(reading.verticalUnit, verticalUnit));
  }
  const box = sharedBox(reading.box, boxOf(raster, system));
  const middle = lonLat((reading.box.west + reading.box.east) / 2, (reading.box.south + reading.box.north) / 2);
  if (box === null) return failure([...findings, elsewhere(name, middle)]);
  if (raster.block.columns * raster.block.rows > mostBlockCells) return failure([...findings, tooLargeBlocks(name)]);
  const [east_m, north_m] = cellOf(raster, system);
  const plan = gridPlan(box, Math.sqrt(east_m * north_m));
  try {
    const heights = await sample(raster, system, plan, following);
    const { height_m, impossible } = inMetres(heights, unitLength_m[reading.verticalUnit]);
    if (impossible > 0) findings.push(impossibleHeights(impossible));
    const known = height_m.reduce((sum, height) => sum + (Number.isNaN(height) ? 0 : 1), 0);
    if (known === 0) return failure([...findings, elsewhere(name, middle)]);
    const covered = (known / height_m.length) * (area(box) / area(reading.box));
    if (covered < leastCovered) findings.push(gaps(name, 1 - covered));
    return success(heightGridFeature({ ...plan, height_m }, reading.id, name), findings);
  } catch (problem) {
    if (following.signal?.aborted === true) return failure([...findings, stopped(name)]);
    return failure([...findings, unreadable(name, problem instanceof Error ? problem.message : String(problem))]);
  }
}

/** Less is said: the border of a turned grid. */
const leastCovered = 0.98;

function area({ west, south, east, north }: ElevationReading["box"]): number {
  return (east - west) * (north - south);
}

function inMetres(heights: Float64Array, unit_m: number) {
  let impossible = 0;
  const height_m = heights.map((height) => {
    const metres = height * unit_m;
    if (Number.isNaN(metres) || (metres >= lowest_m && metres <= highest_m)) return metres;
    impossible++;
    return NaN;
  });
  return { height_m, impossible };
}

/** Heights at the places of the plan, in the file's unit; a strip of rows at a time, as wide as the memory allows. */
async function sample(
  raster: TiffRaster,
  system: CoordinateSystem,
  plan: GridPlan,
  { progress, signal }: Following,
): Promise<Float64Array> {
  const { columns, rows } = plan;
  const cellAt = cellReader(raster, system, plan);
  const step = cellSteps(cellAt, plan);
  const heights = new Float64Array(columns * rows).fill(NaN);
  const strip = stripRows(raster, plan, step.reach, cellAt);
  progress?.(0);
  for (let first = 0; first < rows; first += strip) {
    signal?.throwIfAborted();
    const last = Math.min(rows, first + strip);
    const places = new Float64Array(2 * columns * (last - first));
    for (let row = first; row < last; row++) {
      for (let column = 0; column < columns; column++) {
        places.set(cellAt(column, row), 2 * ((row - first) * columns + column));
      }
      if ((row - first) % rowsATurn === rowsATurn - 1) await breath();
    }
    const window = windowAround(places, step.reach, raster);
    if (window !== null) {
      const cells = await raster.read(window, signal);
      const mean = meanAround({ cells, window, raster, step });
      for (let i = 0; i < places.length / 2; i++) {
        heights[first * columns + i] = mean(Number(places[2 * i]), Number(places[2 * i + 1]));
        if (i % samplesATurn === samplesATurn - 1) {
          await breath();
          signal?.throwIfAborted();
        }
      }
    }
    progress?.(last / rows);
    await breath();
  }
  return heights;
}

const rowsATurn = 32;
const samplesATurn = 4000;

/** Lets everything else have its turn. */
function breath(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

type CellAt = (column: number, row: number) => readonly [column: number, row: number];

/** Cell of the file, in fractions, at a place of the plan. */
function cellReader({ place }: TiffRaster, system: CoordinateSystem, plan: GridPlan): CellAt {
  const { a, b, c, d, e, f } = place;
  const determinant = a * e - b * d;
  return (column, row) => {
    const [lon, lat] = plan.frame.toLonLat(
      planePoint((column - (plan.columns - 1) / 2) * plan.cell_m, ((plan.rows - 1) / 2 - row) * plan.cell_m),
    );
    const [x, y] = system.fromLonLat(lon, lat);
    return [(e * (x - c) - b * (y - f)) / determinant, (a * (y - f) - d * (x - c)) / determinant];
  };
}

/** Cells of the file from one place of the plan to the next, east and south, taken in the middle: it hardly changes over a parcel. */
export interface CellSteps {
  readonly east: readonly [column: number, row: number];
  readonly south: readonly [column: number, row: number];
  /** Cells around a place that its mean takes in. */
  readonly reach: number;
}

function cellSteps(cellAt: CellAt, { columns, rows }: GridPlan): CellSteps {
  const [column, row] = [(columns - 1) / 2, (rows - 1) / 2];
  const half = (before: readonly [number, number], after: readonly [number, number]) =>
    [(after[0] - before[0]) / 2, (after[1] - before[1]) / 2] as const;
  const east = half(cellAt(column - 1, row), cellAt(column + 1, row));
  const south = half(cellAt(column, row - 1), cellAt(column, row + 1));
  const most = Math.max(Math.abs(east[0]) + Math.abs(south[0]), Math.abs(east[1]) + Math.abs(south[1]));
  return { east, south, reach: Math.ceil(most / 2) + 2 };
}

/** So many rows of the plan that their cells are held at once, or one block of the file. */
function stripRows(raster: TiffRaster, plan: GridPlan, reach: number, cellAt: CellAt): number {
  const corners = [cellAt(0, 0), cellAt(plan.columns - 1, 0), cellAt(0, plan.rows - 1)] as const;
  const span = (k: 0 | 1) => {
    const all = corners.map((corner) => corner[k]);
    return Math.max(...all) - Math.min(...all) + 2 * reach;
  };
  const held = Math.max(windowCells, Math.min(mostBlockCells, 2 * raster.block.columns * raster.block.rows));
  const cellsAtOnce = Math.min(raster.columns, span(0)) * Math.min(raster.rows, span(1));
  const strips = Math.max(1, Math.ceil(cellsAtOnce / held));
  return Math.max(1, Math.ceil(plan.rows / strips));
}

function windowAround(places: Float64Array, reach: number, raster: TiffRaster): Window | null {
  let [west, east, north, south] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < places.length; i += 2) {
    const [column, row] = [Number(places[i]), Number(places[i + 1])];
    if (column < west) west = column;
    if (column > east) east = column;
    if (row < north) north = row;
    if (row > south) south = row;
  }
  const window = {
    west: Math.max(0, Math.floor(west) - reach),
    north: Math.max(0, Math.floor(north) - reach),
    east: Math.min(raster.columns, Math.ceil(east) + reach + 1),
    south: Math.min(raster.rows, Math.ceil(south) + reach + 1),
  };
  return window.west < window.east && window.north < window.south ? window : null;
}
