import { angleOf, type CellAngle } from "./angle-of.ts";
import { countMark, type DecimalMark, markOf, noMarks, numberOf } from "./numbers.ts";
import type { Pair } from "./place-heads.ts";
import { type Cell, type FileTable, mostCells, mostLines } from "./table.ts";
import type { TableLayout } from "./table-layout.ts";

/** What the numbers of the places of a table are like. */
export interface TableNumbers {
  /** Lines below the heads. */
  readonly lines: number;
  /** Cells in them. */
  readonly cells: number;
  /** null: it cannot be told, see `example`. */
  readonly mark: DecimalMark | null;
  readonly example: string;
  /** Largest without their signs; 0 when there are none. */
  readonly east: number;
  readonly north: number;
  /** Most decimals that a number has: surveyed lengths have up to four, degrees five and more. */
  readonly decimals: number;
  /** Why the table goes no further; null when it comes to its end. */
  readonly broken: string | null;
}

/** A part of going through a table, after which something else may be done. */
export const linesAStep = 10_000;

/** Goes through a table once, step by step, as far as there are not more lines or cells than are read. */
export function* tableNumbers(table: FileTable, layout: TableLayout): Generator<undefined, TableNumbers> {
  const pairs = layout.place.kind === "pairs" ? layout.place.pairs : [];
  const marks = noMarks();
  const sizes = { ".": { east: 0, north: 0, decimals: 0 }, ",": { east: 0, north: 0, decimals: 0 } };
  let lines = 0;
  let cells = 0;
  let broken: string | null = null;
  for (const line of table.lines()) {
    if (typeof line === "string") {
      broken = line;
      break;
    }
    if (line.line <= layout.headLine) continue;
    lines++;
    cells += line.cells.length;
    if (lines > mostLines || cells > mostCells) break;
    if (lines % linesAStep === 0) yield undefined;
    if (layout.place.kind === "wkt") {
      // With a system of its own it says nothing about the others.
      const [, x = "", y = ""] = firstPosition.exec(String(line.cells[layout.place.column] ?? "")) ?? [];
      measure(sizes["."], x, y, ".");
    }
    for (const pair of pairs) {
      for (const column of columnsOf(pair)) countMark(marks, line.cells[column] ?? "");
      for (const mark of [".", ","] as const) {
        measure(sizes[mark], line.cells[pair.east] ?? "", line.cells[pair.north] ?? "", mark);
      }
    }
  }
  const mark = markOf(marks, table.delimiter);
  const isMixed = marks.point > 0 && marks.comma > 0;
  return { lines, cells, mark, example: isMixed ? "" : marks.example, ...sizes[mark ?? "."], broken };
}

interface Sizes {
  east: number;
  north: number;
  decimals: number;
}

function measure(sizes: Sizes, east: Cell, north: Cell, mark: DecimalMark): void {
  const [one, other] = [coordinateOf(east, mark), coordinateOf(north, mark)];
  if (one === null || other === null) return;
  const ordered = eastFirst(one, other, false);
  if (ordered === null) return;
  sizes.east = Math.max(sizes.east, Math.abs(ordered[0]));
  sizes.north = Math.max(sizes.north, Math.abs(ordered[1]));
  sizes.decimals = Math.max(sizes.decimals, decimalsOf(east), decimalsOf(north));
}

const firstPosition = /^(?!\s*SRID)[^\d]*?([-+\d.eE]+)\s+([-+\d.eE]+)/;

/** Two coordinates, east first: by their letters, which count more than heads, else as they stand or swapped; null when the letters disagree. */
export function eastFirst(
  one: CellAngle,
  other: CellAngle,
  isSwapped: boolean,
): readonly [east: number, north: number] | null {
  const isTurned = one.is === "latitude" || other.is === "longitude";
  const isStraight = one.is === "longitude" || other.is === "latitude";
  if (isTurned && isStraight) return null;
  const turns = isTurned || (isSwapped && !isStraight);
  return turns ? [other.degrees, one.degrees] : [one.degrees, other.degrees];
}

/** A coordinate as a number, or as degrees, minutes and seconds; null when it is neither. */
export function coordinateOf(cell: Cell, mark: DecimalMark): CellAngle | null {
  const number = numberOf(cell, mark);
  if (number !== null) return { degrees: number, is: null };
  return typeof cell === "string" && cell !== "" ? angleOf(cell) : null;
}

function columnsOf({ east, north, height }: Pair): readonly number[] {
  return height === null ? [east, north] : [east, north, height.column];
}

/** An angle in minutes and seconds is no length. */
const fineAngle = 9;

/** Decimals as written; degrees, minutes and seconds count as many. */
function decimalsOf(cell: Cell): number {
  const text = String(cell);
  if (!/^[-+]?[\d.,]+$/.test(text)) return fineAngle;
  return /[.,](\d*)$/.exec(text)?.[1]?.length ?? 0;
}
