import { angleOf } from "./angle-of.ts";
import { numberOf } from "./numbers.ts";
import { type PlaceHeads, placeHeads } from "./place-heads.ts";
import type { Cell, FileTable, TableLine } from "./table.ts";

/** How a table is laid out. */
export interface TableLayout extends PlaceHeads {
  /** What each column is called; "column 3" without heads. */
  readonly heads: readonly string[];
  /** The line of the heads; 0 without. */
  readonly headLine: number;
  /** Lines of the table above the heads. */
  readonly above: number;
}

/** Lines among which the heads are looked for: titles stand above them. */
const mostAbove = 20;
/** Lines by which a table without heads is told. */
const looked = 50;

/** The layout of a table by its first lines; without one, what its first line says. */
export function layoutOf(table: FileTable): TableLayout | { readonly first: readonly string[] } {
  const lines: TableLine[] = [];
  for (const line of table.lines()) {
    if (typeof line === "string" || lines.length >= looked) break;
    lines.push(line);
  }
  for (const [above, { line, cells }] of lines.slice(0, mostAbove).entries()) {
    const heads = cells.map(String);
    const found = placeHeads(heads);
    if (found !== null && !cells.some(isNumeric)) return { ...found, heads, headLine: line, above };
  }
  return headless(lines) ?? { first: (lines[0]?.cells ?? []).map(String) };
}

/**
 * Without heads: two columns of numbers, with a name before them or not, and a height behind; the first of the two is taken as the northing or
 * latitude, whether it is is asked. Whole numbers before two others are names of points.
 */
function headless(lines: readonly TableLine[]): TableLayout | null {
  const width = lines.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const isNumberColumn = (i: number) => lines.length > 0 && lines.every(({ cells }) => isNumeric(cells[i] ?? ""));
  const isWholeColumn = (i: number) => lines.every(({ cells }) => /^\d+$/.test(String(cells[i] ?? "")));
  const isHeightColumn = (i: number) =>
    lines.every(({ cells }) => isNumeric(cells[i] ?? "") || (cells[i] ?? "") === "");
  const hasName = !isNumberColumn(0) || (isWholeColumn(0) && isNumberColumn(1) && isNumberColumn(2));
  const first = hasName ? 1 : 0;
  if (!isNumberColumn(first) || !isNumberColumn(first + 1)) return null;
  const hasHeight = width > first + 2 && isHeightColumn(first + 2);
  const height = hasHeight ? { column: first + 2, unit: null } : null;
  const survey = ["point", "north or east", "east or north", "height", "code"].slice(hasName ? 0 : 1);
  const called = hasHeight ? survey : survey.filter((each) => each !== "height" && each !== "code");
  return {
    place: { kind: "pairs", of: "either", pairs: [{ east: first + 1, north: first, height }], unit: null },
    name: hasName ? 0 : null,
    part: null,
    ring: null,
    corner: null,
    heads: Array.from({ length: width }, (_, i) => called[i] ?? `column ${i + 1}`),
    headLine: 0,
    above: 0,
  };
}

function isNumeric(cell: Cell): boolean {
  if (typeof cell === "number") return true;
  if (typeof cell === "boolean" || cell === "") return false;
  return numberOf(cell, ".") !== null || numberOf(cell, ",") !== null || angleOf(cell) !== null;
}
