import type { Cell, List } from "./lists/list.ts";

/** Lines of cells as RFC 4180 text: CRLF after every line, quoted where needed. */
export function csv(lines: readonly (readonly Cell[])[]): string {
  return lines.map((cells) => csvLine(cells.map(csvCell))).join("");
}

/** One line of cells that are text already. */
export function csvLine(cells: readonly string[]): string {
  return `${cells.join(",")}\r\n`;
}

/** A list with its heads as RFC 4180 text. */
export function listCsv({ heads, lines }: List): string {
  return csv([heads, ...lines]);
}

/**
 * A cell as it stands in a line. Office programs run a text cell that starts like a formula; an apostrophe in front keeps it text. Numbers are
 * never touched.
 */
export function csvCell(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
