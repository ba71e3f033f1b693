export type Delimiter = "," | ";" | "\t";

/** One line of a table; a cell in quotes may run over several lines of the file. */
export interface DelimitedLine {
  /** Where it begins in the file, counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** What the cells of a table are told apart by: whichever its first line has most of. */
export function delimiterOf(text: string): Delimiter {
  const [head = ""] = text.split(/\r?\n|\r/, 1);
  const many = (mark: string) => head.split(mark).length;
  if (many("\t") > many(",") && many("\t") > many(";")) return "\t";
  return many(";") > many(",") ? ";" : ",";
}

/**
 * The lines of a table as text (RFC 4180, also with other delimiters and line ends): cells trimmed, doubled quotes undone, empty lines left
 * out. A quote that is never closed runs to the end.
 */
export function delimitedLines(text: string, delimiter: Delimiter): readonly DelimitedLine[] {
  const lines: DelimitedLine[] = [];
  let cells: string[] = [];
  let cell = "";
  let isQuoted = false;
  let line = 1;
  let begun = 1;
  const endLine = () => {
    cells.push(cell.trim());
    if (cells.some((each) => each !== "")) lines.push({ line: begun, cells });
    cells = [];
    cell = "";
    begun = line;
  };
  for (let i = 0; i < text.length; i++) {
    const mark = text.charAt(i);
    const isLineEnd = mark === "\n" || (mark === "\r" && text.charAt(i + 1) !== "\n");
    if (isLineEnd) line++;
    if (isQuoted) {
      if (mark === '"' && text.charAt(i + 1) === '"') {
        cell += mark;
        i++;
      } else if (mark === '"') isQuoted = false;
      else cell += mark;
    } else if (mark === '"' && cell.trim() === "") {
      cell = "";
      isQuoted = true;
    } else if (mark === delimiter) {
      cells.push(cell.trim());
      cell = "";
    } else if (isLineEnd) endLine();
    else if (mark !== "\r") cell += mark;
  }
  endLine();
  return lines;
}
