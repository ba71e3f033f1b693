import type { Cell } from "./table.ts";

/** What stands before the decimals of a table's numbers. */
export type DecimalMark = "." | ",";

const whole = /^[-+]?\d+$/;
const grouped = /^[-+]?\d{1,3}(?:([.,])\d{3})(?:\1\d{3})+$/;
const both = /^[-+]?\d[\d.,]*([.,])\d*$/;
const single = /^[-+]?(\d*)([.,])(\d*)$/;

/** What the numbers of a table say about their decimal mark, gathered cell by cell. */
export interface MarkCount {
  point: number;
  comma: number;
  /** "38,292": a comma before three digits, decimals or thousands. */
  doubtful: number;
  example: string;
}

export function noMarks(): MarkCount {
  return { point: 0, comma: 0, doubtful: 0, example: "" };
}

/** Counts what a cell says. */
export function countMark(counts: MarkCount, cell: Cell): void {
  if (typeof cell !== "string" || !/[.,]/.test(cell)) return;
  const text = plainNumber(cell);
  const thousands = grouped.exec(text)?.[1];
  const [, before = "", mark, after = ""] = single.exec(text) ?? [];
  if (thousands !== undefined) counts[thousands === "." ? "comma" : "point"]++;
  else if (mark !== undefined) {
    const isDoubtful = after.length === 3 && before.length >= 1 && before.length <= 3 && before !== "0";
    if (!isDoubtful) counts[mark === "." ? "point" : "comma"]++;
    else {
      counts.doubtful++;
      counts.example = text;
    }
  } else if (text.includes(".") && text.includes(",")) {
    const last = both.exec(text)?.[1];
    if (last !== undefined) counts[text.lastIndexOf(".") > text.lastIndexOf(",") ? "point" : "comma"]++;
  }
}

/**
 * The decimal mark that counts say; null where it is doubtful: both are used, or every number is like "38,292". Where commas part the cells,
 * a point needs no proof.
 */
export function markOf({ point, comma, doubtful, example }: MarkCount, delimiter: string | null): DecimalMark | null {
  if (point > 0 && comma > 0) return null;
  if (comma > 0) return ",";
  if (point > 0 || doubtful === 0) return ".";
  return example.includes(".") && delimiter !== ";" ? "." : null;
}

/** A cell as a number; null when it is none. Thousands may be parted by the other mark, by spaces or by apostrophes. */
export function numberOf(cell: Cell | undefined, mark: DecimalMark): number | null {
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : null;
  if (typeof cell !== "string" || cell === "") return null;
  const text = plainNumber(cell);
  if (whole.test(text)) return Number(text);
  const other = mark === "." ? "," : ".";
  const parted = text.split(mark);
  const [before = "", after] = parted;
  if (parted.length > 2) return null;
  const plain = /^[-+]?\d{1,3}(?:[.,]\d{3})+$/.test(before) ? before.replaceAll(other, "") : before;
  const written = after === undefined ? plain : `${plain}.${after}`;
  return /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?$/.test(written) ? Number(written) : null;
}

/** One spelling for signs and parted thousands. */
function plainNumber(cell: string): string {
  const text = cell.trim().replace(/^[−–]/, "-");
  return /[\s'’]/.test(text) ? text.replace(/(?<=\d)[\s'’](?=\d{3}(?:\D|$))/g, "") : text;
}
