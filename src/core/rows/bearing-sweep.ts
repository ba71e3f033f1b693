import type { BlockGround, Ground } from "../ground/ground.ts";
import { axesAt } from "../plane/axes.ts";
import type { RowSettings } from "../project/project.ts";
import { rowDirection_deg } from "./bearing.ts";
import { clearanceOf } from "./block-rows.ts";
import { laidPieces } from "./lay-piece.ts";
import { rowLines } from "./row-one.ts";
import { rowPieces, turnedGround } from "./row-pieces.ts";
import type { Sweep, SweepPoint } from "./rows.ts";

/** A sweep that is done bearing by bearing, so that who has other things to do may come back to it. */
export interface SweepWork {
  /** Tries one more bearing; false when all have been tried. */
  advance(): boolean;
  /** The whole sweep; tries what has not been tried yet. */
  finish(): Sweep;
}

/**
 * What the block holds at every bearing of [0, 180), a step in degrees apart (1 or finer). The score is row length less a
 * metre-equivalent per row for its two ends, since the length alone hardly changes with the bearing while the number of ends doubles.
 * Rows that stand already are not counted.
 */
export function bearingSweep(ground: Ground, block: BlockGround, settings: RowSettings, step_deg: number): SweepWork {
  const steps = Math.max(1, Math.round(180 / step_deg));
  const points: SweepPoint[] = [];
  let sweep: Sweep | null = null;
  const advance = (): boolean => {
    if (points.length < steps) points.push(sweepPoint(ground, block, settings, (points.length * 180) / steps));
    return points.length < steps;
  };
  return {
    advance,
    finish: () => {
      while (sweep === null && advance());
      sweep ??= { block: block.block, points, best: bestOf(points) };
      return sweep;
    },
  };
}

/** The best score outside the locked ranges; null when no bearing holds a row. */
function bestOf(points: readonly SweepPoint[]): SweepPoint | null {
  let best: SweepPoint | null = null;
  for (const point of points) {
    if (!point.locked && point.rows > 0 && (best === null || point.score_m > best.score_m)) best = point;
  }
  return best;
}

/** True when the bearing lies in a locked range, ends included; ranges run clockwise and may pass through 180. */
export function isLocked(bearing_deg: number, settings: RowSettings): boolean {
  return settings.lockedBearings.some(({ from_deg, to_deg }) =>
    from_deg <= to_deg
      ? bearing_deg >= from_deg && bearing_deg <= to_deg
      : bearing_deg >= from_deg || bearing_deg <= to_deg,
  );
}

function sweepPoint(ground: Ground, block: BlockGround, settings: RowSettings, bearing_deg: number): SweepPoint {
  const clearance = clearanceOf(settings);
  const turned = turnedGround(block, axesAt(block.centre, rowDirection_deg(bearing_deg, block)), clearance.usualGap_m);
  const lines = rowLines(turned, settings, clearance, ground.frame);
  let rowLength_m = 0;
  let rows = 0;
  let shortRows = 0;
  for (const { row } of laidPieces(rowPieces(turned, lines, clearance), settings, () => false)) {
    if (row === null) shortRows++;
    else {
      rows++;
      rowLength_m += row.layout.to_m - row.layout.from_m;
    }
  }
  return {
    bearing_deg,
    rowLength_m,
    rows,
    shortRows,
    meanLength_m: rows > 0 ? rowLength_m / rows : 0,
    plantedShare: block.area_m2 > 0 ? (rowLength_m * settings.rowSpacing_m) / block.area_m2 : 0,
    score_m: rowLength_m - rows * settings.rowCost_m,
    locked: isLocked(bearing_deg, settings),
  };
}
