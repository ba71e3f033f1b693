import type { LineIntervals } from "../plane/lines.ts";
import type { RowSettings } from "../project/project.ts";
import type { RowPieces } from "./row-pieces.ts";
import { isLongEnough } from "./shortest.ts";
import { type RowLayout, rowLayout, vineStations } from "./vines.ts";

/** A stretch of a line, u from low to high, with what cut it at both ends (`Ground.causes`). */
export interface Stretch {
  readonly low_m: number;
  readonly high_m: number;
  readonly lowCause: number;
  readonly highCause: number;
}

/** A row laid into a piece of ground. */
export interface LaidRow {
  /** The stretch it was laid into: the piece, or what gaps leave of it. */
  readonly stretch: Stretch;
  readonly layout: RowLayout;
  /** Gaps carried through, as stations from the start of the row. */
  readonly gaps: readonly (readonly [from_m: number, to_m: number])[];
}

/** A piece of a line, and the row that was laid into it, if any. */
export interface LaidPiece {
  readonly line: number;
  readonly piece: Stretch;
  readonly row: LaidRow | null;
}

/** Every piece of the lines with the row that is laid into it; null where it is too short and not to be kept anyway. */
export function laidPieces(
  { pieces, gaps }: RowPieces,
  settings: RowSettings,
  isKept: (line: number, low_m: number, high_m: number) => boolean,
): readonly LaidPiece[] {
  const laid: LaidPiece[] = [];
  for (let line = 0; line + 1 < pieces.start.length; line++) {
    const within = gaps.u.length === 0 ? [] : stretches(gaps, line);
    for (let n = Number(pieces.start[line]); n < Number(pieces.start[line + 1]); n++) {
      const piece = stretch(pieces, n);
      const keep = isKept(line, piece.low_m, piece.high_m);
      laid.push({ line, piece, row: layPiece(piece, within, settings, keep) });
    }
  }
  return laid;
}

/**
 * The row in one piece. A gap that would leave no vine between itself and an end of the row is not worth carrying wires through: the
 * piece ends there, so that no end post stands in a gap.
 */
function layPiece(piece: Stretch, gaps: readonly Stretch[], settings: RowSettings, keep: boolean): LaidRow | null {
  const { low_m, high_m } = piece;
  const isForward = settings.firstSide === "left";
  if (!keep && !isLongEnough(high_m - low_m, settings)) return null;
  // The grid of aligned vines passes through the middle of the block, where u is 0.
  const layout = rowLayout(high_m - low_m, settings, isForward ? -low_m : high_m);
  if (layout === null) return null;
  const isFewer = (vines: number) => !keep && settings.minRow.kind === "vines" && vines < settings.minRow.vines;
  const inside = gaps.filter((gap) => gap.high_m > low_m && gap.low_m < high_m);
  if (inside.length === 0) return isFewer(layout.vines) ? null : { stretch: piece, layout, gaps: [] };
  const station = (u_m: number) => (isForward ? u_m - low_m : high_m - u_m) - layout.from_m;
  const carried = inside.map(({ low_m: low, high_m: high }): readonly [number, number] =>
    isForward ? [station(low), station(high)] : [station(high), station(low)],
  );
  const vines = vineStations(layout.firstVine_m - layout.from_m, layout.vines, settings.vineSpacing_m, carried);
  const first = Math.min(...vines);
  const last = Math.max(...vines);
  const idle = inside.findIndex((_, i) => {
    const [from, to] = carried[i] ?? [0, 0];
    return to <= first || from >= last;
  });
  const gap = inside[idle];
  if (gap === undefined || layout.vines === 0) {
    return isFewer(vines.length) ? null : { stretch: piece, layout, gaps: carried };
  }
  const isAtStart = Number(carried[idle]?.[1]) <= first;
  const rest: Stretch =
    isAtStart === isForward
      ? { ...piece, low_m: gap.high_m, lowCause: gap.highCause }
      : { ...piece, high_m: gap.low_m, highCause: gap.lowCause };
  return rest.high_m > rest.low_m ? layPiece(rest, gaps, settings, keep) : null;
}

function stretches(of: LineIntervals, line: number): readonly Stretch[] {
  const first = Number(of.start[line]);
  return Array.from({ length: Number(of.start[line + 1]) - first }, (_, i) => stretch(of, first + i));
}

function stretch({ u, cause }: LineIntervals, n: number): Stretch {
  return {
    low_m: Number(u[2 * n]),
    high_m: Number(u[2 * n + 1]),
    lowCause: Number(cause[2 * n]),
    highCause: Number(cause[2 * n + 1]),
  };
}
