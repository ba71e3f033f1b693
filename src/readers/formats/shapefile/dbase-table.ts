import { mostValues } from "../../most-found.ts";
import { type Letters, lettersOf, withoutCutLetter } from "./letters.ts";

export type TableValue = string | number | boolean;

/** A dBASE table, read line by line as asked for. */
export interface DbaseTable {
  readonly count: number;
  readonly columns: readonly string[];
  /** Columns whose values are not read: memos, binary. */
  readonly leftOut: readonly string[];
  readonly letters: Letters;
  /** The first text with letters beyond ASCII. */
  readonly example: string | null;
  /** Names and values of a line that has any; null for a line that is marked as deleted. */
  line(index: number): readonly (readonly [name: string, value: TableValue])[] | null;
}

interface Field {
  readonly name: string;
  readonly type: string;
  readonly from: number;
  readonly width: number;
}

const fieldHead_bytes = 32;
const readTypes = "CNFDLIOB@";

/**
 * The table in a .dbf; half a sentence when it is none or holds less than it says. `cpg` is the text of the file that names the letters.
 * Layout of the dBASE III header as shapelib reads it (from memory).
 */
export function dbaseTable(bytes: Uint8Array, cpg: string | null): DbaseTable | string {
  if (bytes.length < fieldHead_bytes + 1) return "it is cut off";
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(4, true);
  const header_bytes = view.getUint16(8, true);
  const line_bytes = view.getUint16(10, true);
  if (header_bytes < fieldHead_bytes + 1 || header_bytes > bytes.length) return "its header is damaged";
  const described = fieldsIn(bytes, header_bytes, line_bytes);
  if (described === null) return "its columns do not fit its lines";
  if (count * line_bytes > bytes.length - header_bytes) {
    return `it says that it has ${count} lines, and there is room for ${Math.floor((bytes.length - header_bytes) / Math.max(1, line_bytes))}`;
  }
  const read = described.filter(({ type }) => readTypes.includes(type));
  if (count * read.length > 20 * mostValues) return "it has more values than are read";
  const textOf = (line: number, { from, width }: Field): Uint8Array => {
    const at = header_bytes + line * line_bytes + from;
    return trimmed(bytes, at, at + width);
  };
  const texts = function* (): Generator<Uint8Array> {
    for (const field of read) {
      if (field.type === "C") for (let i = 0; i < count; i++) yield textOf(i, field);
    }
    for (const field of described) yield field.bytes;
  };
  const letters = lettersOf(cpg, bytes[29] ?? 0, texts());
  const decode = (text: Uint8Array): string => letters.decode(letters.name === "UTF-8" ? withoutCutLetter(text) : text);
  const named = read.map((field) => ({ ...field, name: decode(field.bytes) }));
  const before = named.map((): readonly [Uint8Array, string] => [new Uint8Array(0), ""]);
  return {
    count,
    columns: named.map(({ name }) => name),
    leftOut: described.filter(({ type }) => !readTypes.includes(type)).map((field) => decode(field.bytes)),
    letters,
    example: exampleOf(texts(), decode),
    line: (index) => {
      if (bytes[header_bytes + index * line_bytes] === 0x2a) return null;
      return named.flatMap((field, f): readonly (readonly [string, TableValue])[] => {
        const text = textOf(index, field);
        // Many lines have the same word: it is kept once.
        const [same, word] = before[f] ?? [];
        const isSame = same !== undefined && word !== undefined && alike(same, text);
        const decoded = isSame ? word : decode(text);
        if (!isSame) before[f] = [text, decoded];
        const value = fieldValue(
          field.type,
          decoded,
          view,
          header_bytes + index * line_bytes + field.from,
          field.width,
        );
        return value === null ? [] : [[field.name, value]];
      });
    },
  };
}

function fieldsIn(bytes: Uint8Array, header_bytes: number, line_bytes: number) {
  const heads: Uint8Array[] = [];
  for (let at = fieldHead_bytes; at + fieldHead_bytes <= header_bytes && bytes[at] !== 0x0d; at += fieldHead_bytes) {
    heads.push(bytes.subarray(at, at + fieldHead_bytes));
  }
  // Some writers put the upper byte of a text's width where decimals stand.
  const widthsOf = (isWide: boolean) =>
    heads.map((head) => (head[16] ?? 0) + (isWide && head[11] === 0x43 ? 256 * (head[17] ?? 0) : 0));
  const plain = widthsOf(false);
  const sum = (widths: readonly number[]) => widths.reduce((total, width) => total + width, 1);
  const widths = sum(plain) === line_bytes ? plain : widthsOf(true);
  if (heads.length > 0 && sum(widths) > line_bytes) return null;
  let from = 1;
  return heads.map((head, i) => {
    const width = widths[i] ?? 0;
    const end = head.subarray(0, 11).indexOf(0);
    const field = {
      bytes: trimmed(head, 0, end < 0 ? 11 : end),
      name: "",
      type: String.fromCharCode(head[11] ?? 0).toUpperCase(),
      from,
      width,
    };
    from += width;
    return field;
  });
}

function trimmed(bytes: Uint8Array, start: number, end: number): Uint8Array {
  let last = end;
  while (last > start && ((bytes[last - 1] ?? 0) === 0x20 || bytes[last - 1] === 0)) last--;
  return bytes.subarray(start, last);
}

function alike(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}

function exampleOf(texts: Iterable<Uint8Array>, decode: (text: Uint8Array) => string): string | null {
  for (const text of texts) if (text.some((byte) => byte >= 128)) return decode(text).slice(0, 60);
  return null;
}

/** A value by the type of its column; null for none. */
function fieldValue(type: string, text: string, view: DataView, at: number, width: number): TableValue | null {
  switch (type) {
    case "C":
      return text === "" ? null : text;
    case "N":
    case "F": {
      const plain = text.trim().replace(",", ".");
      // A field full of asterisks is a number that did not fit.
      if (plain === "" || !/^[-+]?[\d.]/.test(plain)) return null;
      const number = Number(plain);
      return Number.isFinite(number) ? number : null;
    }
    case "L":
      return /^[TtYy]$/.test(text) ? true : /^[FfNn]$/.test(text) ? false : null;
    case "D":
      return /^\d{8}$/.test(text) ? `${text.slice(0, 4)}-${text.slice(4, 6)}-${text.slice(6)}` : null;
    case "I":
      return width === 4 ? view.getInt32(at, true) : null;
    case "O":
    case "B": {
      if (width !== 8) return null;
      const number = view.getFloat64(at, true);
      return Number.isFinite(number) ? number : null;
    }
    default:
      return null;
  }
}
