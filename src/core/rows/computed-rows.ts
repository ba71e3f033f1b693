import type { Cause } from "../ground/ground.ts";
import { type Axes, turnBack } from "../plane/axes.ts";
import type { Lines } from "../plane/lines.ts";
import type { RowSettings } from "../project/project.ts";
import { type LaidPiece, type LaidRow, laidPieces, type Stretch } from "./lay-piece.ts";
import type { RowDraft } from "./row-draft.ts";
import type { RowPieces } from "./row-pieces.ts";

export interface ComputedRows {
  readonly rows: readonly RowDraft[];
  /** Pieces under the shortest row that nobody asked to keep. */
  readonly shortPieces: number;
  readonly shortLength_m: number;
}

/** A place by which even a short piece is kept. */
export interface KeptAt {
  readonly u_m: number;
  readonly v_m: number;
}

/** Rows in the pieces of ground along the lines, each from its start: the near end when numbering begins on the left, else the far end. */
export function computedRows(
  pieces: RowPieces,
  lines: Lines,
  axes: Axes,
  settings: RowSettings,
  kept: readonly KeptAt[],
  causes: readonly Cause[],
): ComputedRows {
  const across = (line: number) => lines.first_m + line * lines.spacing_m;
  const isKept = (line: number, low_m: number, high_m: number) =>
    kept.some(({ u_m, v_m }) => Math.abs(v_m - across(line)) <= lines.spacing_m / 2 && u_m >= low_m && u_m <= high_m);
  const rows: RowDraft[] = [];
  const short: LaidPiece[] = [];
  for (const piece of laidPieces(pieces, settings, isKept)) {
    if (piece.row === null) short.push(piece);
    else rows.push(draft(piece.piece, piece.row, across(piece.line), axes, settings.firstSide === "left", causes));
  }
  const shortLength_m = short.reduce((sum, { piece }) => sum + piece.high_m - piece.low_m, 0);
  return { rows, shortPieces: short.length, shortLength_m };
}

function draft(
  piece: Stretch,
  row: LaidRow,
  v_m: number,
  axes: Axes,
  isForward: boolean,
  causes: readonly Cause[],
): RowDraft {
  const { layout, stretch } = row;
  const at = (station_m: number) =>
    turnBack(isForward ? stretch.low_m + station_m : stretch.high_m - station_m, v_m, axes);
  const low = causes[stretch.lowCause] ?? null;
  const high = causes[stretch.highCause] ?? null;
  return {
    across_m: v_m,
    along_m: isForward ? piece.low_m : -piece.high_m,
    start: at(layout.from_m),
    end: at(layout.to_m),
    length_m: layout.to_m - layout.from_m,
    layout,
    gaps: row.gaps,
    startLeftover_m: layout.from_m,
    endLeftover_m: stretch.high_m - stretch.low_m - layout.to_m,
    startCut: isForward ? low : high,
    endCut: isForward ? high : low,
    given: null,
  };
}
