import { mostColumns, mostLetters, type ReadLine } from "./table.ts";

/** Letters of a line of the file, quotes and all. */
const longestLine = 1_000_000;

/**
 * The lines of a table as text (RFC 4180, also with other delimiters and line ends): cells trimmed, doubled quotes undone, empty lines left
 * out. `null` parts cells at any run of spaces. The last thing it gives may be the reason why it ends there.
 */
export function* delimitedLines(text: string, delimiter: string | null): Generator<ReadLine> {
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const end = lineEnd(text, at);
    if (end - at > longestLine) return yield `line ${line} has more than ${longestLine} letters`;
    const plain = text.slice(at, end);
    if (plain.includes('"') && delimiter !== null) {
      const quoted = quotedLine(text, at, delimiter);
      if (typeof quoted === "string") return yield `${quoted} in line ${line}`;
      if (quoted.cells.length > mostColumns) return yield `line ${line} has more than ${mostColumns} cells`;
      if (quoted.cells.some((cell) => cell !== "")) yield { line, cells: quoted.cells };
      line += quoted.lines;
      at = quoted.end;
      continue;
    }
    const cells = plain === "" ? [] : partsOf(plain, delimiter);
    if (cells.length > mostColumns) return yield `line ${line} has more than ${mostColumns} cells`;
    if (cells.some((cell) => cell.length > mostLetters)) return yield `a cell in line ${line} is too long`;
    if (cells.some((cell) => cell !== "")) yield { line, cells };
    line++;
    at = afterLine(text, end);
  }
}

function partsOf(plain: string, delimiter: string | null): readonly string[] {
  if (delimiter === null) return plain.trim().split(/\s+/);
  return plain.split(delimiter).map((cell) => cell.trim());
}

interface QuotedLine {
  readonly cells: readonly string[];
  readonly end: number;
  /** Lines of the file that it takes. */
  readonly lines: number;
}

/** A line with quotes in it, which may run over several lines of the file; half a sentence when a quote does not end. */
function quotedLine(text: string, from: number, delimiter: string): QuotedLine | string {
  const cells: string[] = [];
  let lines = 1;
  let at = from;
  for (;;) {
    while (text.charAt(at) === " ") at++;
    let cell = "";
    if (text.charAt(at) === '"') {
      let close = at;
      for (;;) {
        const next = text.indexOf('"', close + 1);
        if (next < 0 || next - at > mostLetters) return "a quote does not end";
        cell += text.slice(close + 1, next);
        close = next;
        if (text.charAt(next + 1) !== '"') break;
        cell += '"';
        close = next + 1;
      }
      lines += cell.split(/\r\n|\r|\n/).length - 1;
      at = close + 1;
    }
    const next = cellEnd(text, at, delimiter);
    cell += text.slice(at, next).trim();
    cells.push(cell.trim());
    if (text.charAt(next) !== delimiter || cells.length > mostColumns)
      return { cells, end: afterLine(text, next), lines };
    at = next + 1;
  }
}

function cellEnd(text: string, from: number, delimiter: string): number {
  let at = from;
  while (at < text.length && !"\r\n".includes(text.charAt(at)) && text.charAt(at) !== delimiter) at++;
  return at;
}

/** Where the line ends: before CR, LF or both. */
function lineEnd(text: string, from: number): number {
  const feed = text.indexOf("\n", from);
  const end = feed < 0 ? text.length : feed;
  const back = text.slice(from, Math.min(end, from + longestLine + 1)).indexOf("\r");
  return back < 0 ? end : from + back;
}

function afterLine(text: string, end: number): number {
  if (text.charAt(end) === "\r") return text.charAt(end + 1) === "\n" ? end + 2 : end + 1;
  return end + 1;
}
