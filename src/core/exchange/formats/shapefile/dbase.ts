import { strToU8 } from "fflate";
import { featuresAChunk } from "../../format.ts";
import type { Column, Value } from "../../layers/layer.ts";
import { growingBytes } from "./growing.ts";

/** Bytes that a text field of a dBASE table holds at most; longer ones are not read by all. */
export const longestText_bytes = 254;
const fieldHead_bytes = 32;
const space = 32;

/** The values of a table as the texts they will be, packed until the width of every column is known. */
export interface Table {
  readonly columns: readonly Column[];
  readonly count: number;
  readonly bytes: Uint8Array;
  /** Of every value, line after line. */
  readonly lengths: Uint8Array;
  readonly widths: readonly number[];
}

/** Gathers lines one by one. `tooLong` is told of every text that had to be cut. */
export function tableGathered(columns: readonly Column[], tooLong: (text: string, column: Column) => void) {
  const bytes = growingBytes();
  const lengths = growingBytes();
  const widths = columns.map(() => 1);
  let count = 0;
  const pushed = (text: string, column: Column): number => {
    const at = bytes.count();
    if (isShortAscii(text)) {
      const kept = bytes.withRoom(text.length);
      for (let i = 0; i < text.length; i++) kept[at + i] = text.charCodeAt(i) || space;
      bytes.counted(at + text.length);
      return text.length;
    }
    const whole = strToU8(text.replaceAll("\0", " "));
    const length = cutLength(whole);
    if (length < whole.length) tooLong(text, column);
    bytes.withRoom(length).set(whole.subarray(0, length), at);
    bytes.counted(at + length);
    return length;
  };
  return {
    add: (values: readonly Value[]): void => {
      const first = columns.length * count++;
      const kept = lengths.withRoom(columns.length);
      for (const [i, column] of columns.entries()) {
        const length = pushed(textOf(values[i] ?? null, column), column);
        kept[first + i] = length;
        if (length > (widths[i] ?? 0)) widths[i] = length;
      }
      lengths.counted(first + columns.length);
    },
    all: (): Table => ({ columns, count, bytes: bytes.all(), lengths: lengths.all(), widths }),
  };
}

/** The table as a file (.dbf, dBASE III): header, a description of 32 bytes a column, lines of one width. `day` is "2026-11-26". */
export function* dbfBytes(table: Table, names: readonly string[], day: string): Generator<Uint8Array> {
  const { columns, count, widths, lengths, bytes } = table;
  const line_bytes = widths.reduce((sum, width) => sum + width, 1);
  yield header(table, names, line_bytes, day);
  const isRight = columns.map(({ type }) => type === "number" || type === "whole");
  let value = 0;
  let from = 0;
  for (let first = 0; first < count; first += featuresAChunk) {
    const lines = Math.min(featuresAChunk, count - first);
    const chunk = new Uint8Array(lines * line_bytes).fill(space);
    let at = 0;
    for (let i = 0; i < lines; i++) {
      at++;
      for (let c = 0; c < widths.length; c++) {
        const width = widths[c] ?? 0;
        const length = lengths[value++] ?? 0;
        const start = isRight[c] ? at + width - length : at;
        for (let b = 0; b < length; b++) chunk[start + b] = bytes[from + b] ?? space;
        from += length;
        at += width;
      }
    }
    yield chunk;
  }
  yield Uint8Array.of(0x1a);
}

function header({ columns, count, widths }: Table, names: readonly string[], line_bytes: number, day: string) {
  const size = fieldHead_bytes * (columns.length + 1) + 1;
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  const [year = 1900, month = 1, date = 1] = day.split("-").map(Number);
  bytes.set([3, (year - 1900) % 256, month, date]);
  view.setUint32(4, count, true);
  view.setUint16(8, size, true);
  view.setUint16(10, line_bytes, true);
  columns.forEach(({ type, decimals }, i) => {
    const at = fieldHead_bytes * (i + 1);
    bytes.set(strToU8(names[i] ?? ""), at);
    bytes[at + 11] = fieldType[type].charCodeAt(0);
    bytes[at + 16] = widths[i] ?? 1;
    bytes[at + 17] = type === "number" ? (decimals ?? usualDecimals) : 0;
  });
  bytes[size - 1] = 0x0d;
  return bytes;
}

const fieldType = { text: "C", number: "N", whole: "N", yes: "L" } as const;
const usualDecimals = 3;

function textOf(value: Value, { type, decimals }: Column): string {
  if (type === "yes") return value === true ? "T" : value === false ? "F" : "?";
  if (value === null) return "";
  if (typeof value === "number") {
    if (!Number.isFinite(value)) return "";
    if (type === "text") return String(value);
    return value.toFixed(type === "whole" ? 0 : (decimals ?? usualDecimals));
  }
  return String(value);
}

function isShortAscii(text: string): boolean {
  if (text.length > longestText_bytes) return false;
  for (let i = 0; i < text.length; i++) if (text.charCodeAt(i) > 126) return false;
  return true;
}

/** How much of a UTF-8 text fits, without half a letter at the end. */
function cutLength(whole: Uint8Array): number {
  if (whole.length <= longestText_bytes) return whole.length;
  let end = longestText_bytes;
  while (end > 0 && ((whole[end] ?? 0) & 0xc0) === 0x80) end--;
  return end;
}
