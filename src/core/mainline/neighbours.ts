import type { RouteRows } from "./route-job.ts";

/** For every row the row beside it on the next line of its block, seen from its start and from its end; -1 where there is none. */
export interface Neighbours {
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** The next piece of the same line, -1 for the last one. */
  readonly onward: Int32Array;
}

/** Rows of one line of one block, in the order they lie along it. */
type Lines = ReadonlyMap<number, readonly number[]>;

/**
 * Which rows lie side by side. On the next line the piece whose end is nearest counts, if the row is the nearest to it too: pieces
 * of a split row have at most one neighbour at each end.
 */
export function neighboursOf(rows: RouteRows): Neighbours {
  const count = rows.line.length;
  const start = new Int32Array(count).fill(-1);
  const end = new Int32Array(count).fill(-1);
  const onward = new Int32Array(count).fill(-1);
  for (const lines of linesOfBlocks(rows)) {
    for (const [line, pieces] of lines) {
      pieces.slice(1).forEach((piece, i) => {
        onward[pieces[i] ?? 0] = piece;
      });
      const beside = lines.get(line + 1) ?? [];
      for (const [ends, at] of [
        [start, 0],
        [end, 2],
      ] as const) {
        for (const row of pieces) {
          const nearest = nearestOf(rows, row, beside, at);
          if (nearest >= 0 && nearestOf(rows, nearest, pieces, at) === row) ends[row] = nearest;
        }
      }
    }
  }
  return { start, end, onward };
}

function linesOfBlocks(rows: RouteRows): Iterable<Lines> {
  const blocks = new Map<number, Map<number, number[]>>();
  rows.line.forEach((line, row) => {
    const block = Number(rows.block[row]);
    const lines = blocks.get(block) ?? new Map<number, number[]>();
    lines.set(line, [...(lines.get(line) ?? []), row]);
    blocks.set(block, lines);
  });
  return blocks.values();
}

/** The row whose post at the same end is nearest; -1 for none. */
function nearestOf({ posts }: RouteRows, row: number, among: readonly number[], at: 0 | 2): number {
  let nearest = -1;
  let least_m = Infinity;
  for (const other of among) {
    const away_m = Math.hypot(
      Number(posts[4 * other + at]) - Number(posts[4 * row + at]),
      Number(posts[4 * other + at + 1]) - Number(posts[4 * row + at + 1]),
    );
    if (away_m >= least_m) continue;
    nearest = other;
    least_m = away_m;
  }
  return nearest;
}
