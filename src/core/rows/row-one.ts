import { turnPoint } from "../plane/axes.ts";
import type { Frame } from "../plane/frame.ts";
import { type Lines, linesWithin } from "../plane/lines.ts";
import type { RowSettings } from "../project/project.ts";
import { laidPieces } from "./lay-piece.ts";
import { type Clearance, type RowPieces, rowPieces, type TurnedGround } from "./row-pieces.ts";
import { isLongEnough } from "./shortest.ts";

/** How finely the first plantable line is looked for, as shares of the row spacing, the finer one where the other finds none; then it is closed in on. */
const searchSteps = [1 / 8, 1 / 128] as const;
/** Halvings that bring a step of a metre under a nanometre. */
const halvings = 30;
/** Positions tried within one spacing when row 1 sits where most row is held. */
const positionsTried = 32;

/** The lines that rows may lie on: all of one spacing, placed as row 1 is wanted. */
export function rowLines(ground: TurnedGround, settings: RowSettings, clearance: Clearance, frame: Frame): Lines {
  const { lowest_m, highest_m } = ground;
  const spacing = settings.rowSpacing_m;
  if (!(highest_m > lowest_m)) return { first_m: 0, spacing_m: spacing, count: 0 };
  const through = (at_m: number) => linesWithin(lowest_m, highest_m, spacing, at_m);
  const { rowOne } = settings;
  switch (rowOne.kind) {
    case "through": {
      const [, v_m] = turnPoint(frame.toPlane(rowOne.point), ground.axes);
      return through(v_m);
    }
    case "from-side":
      return settings.firstSide === "left"
        ? linesWithin(lowest_m + rowOne.distance_m, highest_m, spacing, lowest_m + rowOne.distance_m)
        : linesWithin(lowest_m, highest_m - rowOne.distance_m, spacing, highest_m - rowOne.distance_m);
    case "centred":
      return centred(ground, settings, clearance);
    case "most-row":
      return through(bestPosition(ground, settings, clearance));
  }
}

/**
 * Rows centred in the width that can be planted: the first and the last line that hold a row are found, as many rows as fit between
 * them are laid (floor(W / R + 1e-9) + 1), and the leftover is split over both sides.
 */
function centred(ground: TurnedGround, settings: RowSettings, clearance: Clearance): Lines {
  const spacing_m = settings.rowSpacing_m;
  const holds = (v_m: number) => holdsRow(ground, settings, clearance, v_m);
  const found = (from_m: number, to_m: number) =>
    outermost(from_m, to_m, spacing_m * searchSteps[0], holds) ??
    outermost(from_m, to_m, spacing_m * searchSteps[1], holds);
  const low = found(ground.lowest_m, ground.highest_m);
  const high = low === null ? null : found(ground.highest_m, ground.lowest_m);
  if (low === null || high === null) return { first_m: 0, spacing_m, count: 0 };
  const spaces = Math.floor((high - low) / spacing_m + 1e-9);
  return { first_m: low + Math.max(0, (high - low - spaces * spacing_m) / 2), spacing_m, count: spaces + 1 };
}

/** The first place from one side to the other that holds a row, closed in on to a nanometre; null when there is none. */
function outermost(from_m: number, to_m: number, least_m: number, holds: (v_m: number) => boolean): number | null {
  const steps = Math.ceil(Math.abs(to_m - from_m) / least_m);
  const step_m = from_m < to_m ? least_m : -least_m;
  if (holds(from_m)) return from_m;
  for (let i = 1; i <= steps; i++) {
    let inner = from_m + i * step_m;
    if (!holds(inner)) continue;
    let outer = inner - step_m;
    for (let n = 0; n < halvings; n++) {
      const middle = (inner + outer) / 2;
      if (holds(middle)) inner = middle;
      else outer = middle;
    }
    return inner;
  }
  return null;
}

function holdsRow(ground: TurnedGround, settings: RowSettings, clearance: Clearance, v_m: number): boolean {
  return heldLength(rowPieces(ground, { first_m: v_m, spacing_m: 1, count: 1 }, clearance), settings) > 0;
}

/**
 * The position within one spacing with the most row length: that of centred rows and even steps are tried, then it is closed in on
 * between the neighbours of the best.
 */
function bestPosition(ground: TurnedGround, settings: RowSettings, clearance: Clearance): number {
  const { lowest_m, highest_m } = ground;
  const spacing = settings.rowSpacing_m;
  const lengthAt = (v_m: number) =>
    heldLength(rowPieces(ground, linesWithin(lowest_m, highest_m, spacing, v_m), clearance), settings);
  let best = { at_m: lowest_m, length_m: -1 };
  const consider = (at_m: number) => {
    const length_m = lengthAt(at_m);
    if (length_m > best.length_m + 1e-6) best = { at_m, length_m };
  };
  // The only one that may hold a row more: where a whole number of spacings fits exactly from side to side.
  const middle = centred(ground, settings, clearance);
  if (middle.count > 0) consider(middle.first_m);
  for (let i = 0; i < positionsTried; i++) consider(lowest_m + (i * spacing) / positionsTried);
  for (let step = spacing / positionsTried / 2; step > spacing / 2000; step /= 2) {
    const { at_m } = best;
    consider(at_m - step);
    consider(at_m + step);
  }
  return best.at_m;
}

/** Length of the pieces that would hold rows. */
function heldLength({ pieces, gaps }: RowPieces, settings: RowSettings): number {
  let sum = 0;
  if (gaps.u.length > 0) {
    for (const { row } of laidPieces({ pieces, gaps }, settings, () => false)) {
      if (row !== null) sum += row.stretch.high_m - row.stretch.low_m;
    }
    return sum;
  }
  // Without gaps a piece is laid as it is; this runs for every place that is tried.
  for (let n = 0; 2 * n + 1 < pieces.u.length; n++) {
    const piece_m = Number(pieces.u[2 * n + 1]) - Number(pieces.u[2 * n]);
    if (isLongEnough(piece_m, settings)) sum += piece_m;
  }
  return sum;
}
