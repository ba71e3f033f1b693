import { type Cell, mostColumns, mostLetters, type ReadLine } from "../tables/table.ts";
import { plainText } from "../xml-steps.ts";
import { elementsIn } from "./elements-in.ts";
import { cellText, textsIn } from "./texts-in.ts";
import type { Workbook } from "./workbook.ts";

/** Bytes that become text at a time: a sheet is never held as text as a whole. */
const piece_bytes = 262_144;
/** Letters of one line of a sheet: 1000 cells, each as long as a cell may be, is far more than any has. */
const longestRow = 4_000_000;

const rowStart = /<(?:[\w.-]+:)?row(?=[\s/>])([^>]*)>/g;
const rowEnd = /<\/(?:[\w.-]+:)?row\s*>/g;
const sheetEnd = /<\/(?:[\w.-]+:)?worksheet\s*>/;
const cellElements = elementsIn("c");
const valueElements = elementsIn("v");

/**
 * The lines of a sheet, from its bytes as they become text. Numbers in the style of a date are dates as text (ISO 8601). What cannot go on says why.
 * Source: ECMA-376 part 1, section 18.3 (from memory).
 */
export function* sheetLines(bytes: Uint8Array, workbook: Workbook): Generator<ReadLine> {
  let count = 0;
  for (const row of rowsOf(bytes)) {
    if (typeof row === "string") return yield row;
    count = numberOfRow(row.attributes) ?? count + 1;
    const cells = cellsOf(row.inside, workbook);
    if (cells === null) return yield `line ${count} has more than ${mostColumns} cells, or a cell that is too long`;
    if (cells.some((cell) => cell !== "")) yield { line: count, cells };
  }
}

interface Row {
  readonly attributes: string;
  readonly inside: string;
}

function* rowsOf(bytes: Uint8Array): Generator<Row | string> {
  const decoder = new TextDecoder();
  let text = "";
  let isEnded = false;
  for (let from = 0; from < bytes.length; from += piece_bytes) {
    const isLast = from + piece_bytes >= bytes.length;
    text += decoder.decode(bytes.subarray(from, from + piece_bytes), { stream: !isLast });
    // Remarks, unparsed text and names for text (entities) are never written into sheets; what is in them would be taken for cells.
    if (text.includes("<!")) return yield "a sheet is not written as workbooks are";
    let at = 0;
    let isOpen = false;
    while (!isOpen) {
      rowStart.lastIndex = at;
      const start = rowStart.exec(text);
      if (start === null) break;
      const [all, attributes = ""] = start;
      const inner = start.index + all.length;
      if (attributes.endsWith("/")) {
        at = inner;
        continue;
      }
      rowEnd.lastIndex = inner;
      const end = rowEnd.exec(text);
      isOpen = end === null;
      at = end === null ? start.index : end.index + end[0].length;
      if (end !== null) yield { attributes, inside: text.slice(inner, end.index) };
    }
    isEnded ||= sheetEnd.test(text);
    // A tag may be cut by the end of the piece; what may still become one is kept.
    text = isOpen ? text.slice(at) : text.slice(Math.max(at, text.lastIndexOf("<")));
    if (text.length > longestRow) return yield `a line has more than ${longestRow} letters`;
  }
  if (!isEnded) yield "a sheet does not end, the file may be cut off";
}

function numberOfRow(attributes: string): number | null {
  const written = /\sr="(\d{1,7})"/.exec(attributes)?.[1];
  return written === undefined ? null : Number(written);
}

function cellsOf(inside: string, workbook: Workbook): readonly Cell[] | null {
  const cells: Cell[] = [];
  let next = 0;
  for (const { attributes, inside: content } of cellElements(inside)) {
    const column = columnOf(/\sr="([A-Z]{1,3})\d*"/.exec(attributes)?.[1]) ?? next;
    if (column >= mostColumns) return null;
    const cell = content === "" ? "" : cellOf(attributes, content, workbook);
    if (typeof cell === "string" && cell.length > mostLetters) return null;
    while (cells.length < column) cells.push("");
    cells[column] = cell;
    next = column + 1;
  }
  return cells;
}

function cellOf(attributes: string, content: string, { shared, dateStyles, isFrom1904 }: Workbook): Cell {
  const type = /\st="(\w+)"/.exec(attributes)?.[1] ?? "n";
  if (type === "inlineStr") return textsIn(content);
  const value = valueElements(content).next().value?.inside ?? "";
  switch (type) {
    case "s":
      return shared[Number(value)] ?? "";
    case "b":
      return value === "1";
    case "n": {
      const number = value === "" ? Number.NaN : Number(value);
      if (!Number.isFinite(number)) return "";
      const style = Number(/\ss="(\d{1,6})"/.exec(attributes)?.[1] ?? -1);
      return dateStyles.has(style) ? (dateOf(number, isFrom1904) ?? number) : number;
    }
    default:
      return cellText(plainText(value) ?? value);
  }
}

/** "A" is 0, "AA" 26. */
function columnOf(letters: string | undefined): number | null {
  if (letters === undefined) return null;
  let column = 0;
  for (const letter of letters) column = 26 * column + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** Days since the end of 1899 (or the beginning of 1904) as a date, with the time where there is one; null beyond the calendar. */
function dateOf(days: number, isFrom1904: boolean): string | null {
  const begin = isFrom1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30);
  if (days < 0 || days > 2_958_465) return null;
  const text = new Date(begin + Math.round(days * 86_400) * 1000).toISOString();
  return Number.isInteger(days) ? text.slice(0, 10) : text.slice(0, 19);
}
