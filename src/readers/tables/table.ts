/** A cell as a file has it; workbooks know numbers, text files do not. */
export type Cell = string | number | boolean;

/** One line of a table, empty ones left out. */
export interface TableLine {
  /** Counted from 1, as an editor or an office program counts it. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

/** A line, or half a sentence that says why a table goes no further. */
export type ReadLine = TableLine | string;

/** A table of a file, read as often as asked for: it is gone through twice rather than held. */
export interface FileTable {
  /** The sheet it stands on; null for a file that is one table. */
  readonly layer: string | null;
  /** What parts its cells; null where they are parted by themselves. */
  readonly delimiter: string | null;
  /** True where the file says of each cell whether it is text: such text is no number, whatever it looks like. */
  readonly isTyped: boolean;
  lines(): Iterable<ReadLine>;
}

/** Lines that are read of one file: what is made of them stays under 512 MB. */
export const mostLines = 300_000;
/** Cells of all of them together: each that is kept takes some 60 bytes. */
export const mostCells = 3_000_000;
/** Columns of a table; far more than any has. */
export const mostColumns = 1000;
/** Letters of a cell, as many as a workbook's holds. */
export const mostLetters = 32_767;
