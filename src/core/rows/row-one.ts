import { turnPoint } from "../plane/axes.ts";
import type { Frame } from "../plane/frame.ts";
import { type Lines, linesWithin } from "../plane/lines.ts";
import type { RowSettings } from "../project/project.ts";
import { laidPieces } from "./lay-piece.ts";
import { type Clearance, type RowPieces, rowPieces, type TurnedGround } from "./row-pieces.ts";
import { isLongEnough } from "./shortest.ts";

/** How finely the first plantable line is looked for, as shares of the row spacing, the finer one where the other finds none; then it is closed in on. */
const searchSteps = [1 / 8, 1 / 128] as const;
/** Lines that are tried at once: cutting many costs little more than cutting one. */
const atOnce = 64;
/** Parts that the step before the first line is divided into, again and again, until it is under a nanometre. */
const parts = 16;
const nearest_m = 1e-9;
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
  const holds = (lines: Lines) => holdRows(rowPieces(ground, lines, clearance), settings);
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
function outermost(
  from_m: number,
  to_m: number,
  step_m: number,
  holds: (lines: Lines) => readonly boolean[],
): number | null {
  const steps = Math.ceil(Math.abs(to_m - from_m) / step_m);
  const inward = from_m < to_m ? 1 : -1;
  let first: number | null = null;
  for (let k = 0; k <= steps && first === null; k += atOnce) {
    first = firstOf(from_m + inward * k * step_m, inward, step_m, Math.min(atOnce, steps + 1 - k), holds);
  }
  if (first === null || first === from_m) return first;
  let inner = first;
  for (let width_m = step_m; width_m > nearest_m; width_m /= parts) {
    const outer = inner - inward * width_m;
    inner = firstOf(outer + (inward * width_m) / parts, inward, width_m / parts, parts - 1, holds) ?? inner;
  }
  return inner;
}

/** The first of several places, a step apart and going inward, that holds a row. */
function firstOf(
  from_m: number,
  inward: number,
  step_m: number,
  count: number,
  holds: (lines: Lines) => readonly boolean[],
): number | null {
  const lowest_m = inward > 0 ? from_m : from_m - (count - 1) * step_m;
  const held = holds({ first_m: lowest_m, spacing_m: step_m, count });
  const i = inward > 0 ? held.indexOf(true) : held.lastIndexOf(true);
  return i < 0 ? null : lowest_m + i * step_m;
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

/** Which of the lines hold a row. */
function holdRows({ pieces, gaps }: RowPieces, settings: RowSettings): readonly boolean[] {
  const held = Array.from({ length: pieces.start.length - 1 }, () => false);
  forEachHeld({ pieces, gaps }, settings, (line) => {
    held[line] = true;
  });
  return held;
}

/** Length of the pieces that would hold rows. */
function heldLength(of: RowPieces, settings: RowSettings): number {
  let sum = 0;
  forEachHeld(of, settings, (_, length_m) => {
    sum += length_m;
  });
  return sum;
}

function forEachHeld(
  { pieces, gaps }: RowPieces,
  settings: RowSettings,
  visit: (line: number, length_m: number) => void,
): void {
  if (gaps.u.length > 0) {
    for (const { line, row } of laidPieces({ pieces, gaps }, settings, () => false)) {
      if (row !== null) visit(line, row.stretch.high_m - row.stretch.low_m);
    }
    return;
  }
  // Without gaps a piece is laid as it is; this runs for every place that is tried.
  for (let line = 0; line + 1 < pieces.start.length; line++) {
    for (let n = Number(pieces.start[line]); n < Number(pieces.start[line + 1]); n++) {
      const piece_m = Number(pieces.u[2 * n + 1]) - Number(pieces.u[2 * n]);
      if (isLongEnough(piece_m, settings)) visit(line, piece_m);
    }
  }
}
