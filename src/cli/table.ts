export interface Column {
  readonly head: string;
  readonly cells: readonly string[];
  /** Numbers stand right. */
  readonly isNumber?: true;
}

/** Columns as lines of text under their heads, two spaces apart, no spaces at line ends. */
export function table(columns: readonly Column[]): string {
  const widths = columns.map((column) => Math.max(column.head.length, ...column.cells.map((cell) => cell.length)));
  const height = Math.max(0, ...columns.map((column) => column.cells.length));
  const lines = [
    columns.map((column) => column.head),
    ...Array.from({ length: height }, (_, i) => columns.map((column) => column.cells[i] ?? "")),
  ];
  return lines
    .map((cells) => {
      const padded = cells.map((cell, i) => {
        const width = widths[i] ?? 0;
        return columns[i]?.isNumber ? cell.padStart(width) : cell.padEnd(width);
      });
      return `${padded.join("  ").trimEnd()}\n`;
    })
    .join("");
}
