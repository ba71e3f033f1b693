import type { Cause } from "../ground/ground.ts";
import { type Axes, turnBack } from "../plane/axes.ts";
import type { Lines } from "../plane/lines.ts";
import type { RowSettings } from "../project/project.ts";
import type { RowDraft } from "./row-draft.ts";
import type { RowPieces } from "./row-pieces.ts";
import { isLongEnough } from "./shortest.ts";
import { rowLayout } from "./vines.ts";

export interface ComputedRows {
  readonly rows: readonly RowDraft[];
  /** Pieces under the shortest row that nobody asked to keep. */
  readonly shortPieces: number;
  readonly shortLength_m: number;
}

/** A place by which even a short piece is kept. */
export interface Kept {
  readonly u_m: number;
  readonly v_m: number;
}

/** Rows in the pieces of ground along the lines, each from its start: the near end when numbering begins on the left, else the far end. */
export function computedRows(
  { pieces, gaps }: RowPieces,
  lines: Lines,
  axes: Axes,
  settings: RowSettings,
  kept: readonly Kept[],
  causes: readonly Cause[],
): ComputedRows {
  const rows: RowDraft[] = [];
  let shortPieces = 0;
  let shortLength_m = 0;
  const isForward = settings.firstSide === "left";
  for (let i = 0; i < lines.count; i++) {
    const v = lines.first_m + i * lines.spacing_m;
    for (let k = Number(pieces.start[i]); k < Number(pieces.start[i + 1]); k++) {
      const low = Number(pieces.u[2 * k]);
      const high = Number(pieces.u[2 * k + 1]);
      const isKept = kept.some(
        (place) => Math.abs(place.v_m - v) <= lines.spacing_m / 2 && place.u_m >= low && place.u_m <= high,
      );
      const along = isForward ? low : -high;
      // The grid of aligned vines passes through the middle of the block.
      const layout = isKept || isLongEnough(high - low, settings) ? rowLayout(high - low, settings, -along) : null;
      if (layout === null) {
        shortPieces++;
        shortLength_m += high - low;
        continue;
      }
      const at = (station_m: number) => turnBack(isForward ? low + station_m : high - station_m, v, axes);
      const cut = (n: number) => causes[Number(pieces.cause[n])] ?? null;
      const carried: [number, number][] = [];
      for (let g = Number(gaps.start[i]); g < Number(gaps.start[i + 1]); g++) {
        const from = Number(gaps.u[2 * g]);
        const to = Number(gaps.u[2 * g + 1]);
        if (to <= low || from >= high) continue;
        carried.push(
          isForward
            ? [from - low - layout.from_m, to - low - layout.from_m]
            : [high - to - layout.from_m, high - from - layout.from_m],
        );
      }
      rows.push({
        across_m: v,
        along_m: along,
        start: at(layout.from_m),
        end: at(layout.to_m),
        length_m: layout.to_m - layout.from_m,
        layout,
        gaps: carried,
        startLeftover_m: layout.from_m,
        endLeftover_m: high - low - layout.to_m,
        startCut: cut(isForward ? 2 * k : 2 * k + 1),
        endCut: cut(isForward ? 2 * k + 1 : 2 * k),
        given: null,
      });
    }
  }
  return { rows, shortPieces, shortLength_m };
}
