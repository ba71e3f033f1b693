/** One group of a DXF text. */
export interface Group {
  readonly code: number;
  readonly value: string;
}

/** One record: what stands from a group 0 to the next one. */
export interface DxfRecord {
  readonly type: string;
  readonly groups: readonly Group[];
}

/** What is met going through the text; the last step of a text that is no DXF says why. */
export type DxfStep =
  | { readonly kind: "record"; readonly record: DxfRecord; readonly at: number }
  | { readonly kind: "broken"; readonly why: string };

/** No record of a field is longer: a polyline of a hundred thousand corners. */
const mostGroups = 1_000_000;

/**
 * Goes through a DXF text record by record; it is never held as lines. Source: DXF reference, "group codes": a code and a value, a line
 * each, whatever ends a line.
 */
export function* dxfRecords(text: string): Generator<DxfStep> {
  let at = text.startsWith("\u{feff}") ? 1 : 0;
  let line = 0;
  let type: string | null = null;
  let groups: Group[] = [];
  const nextLine = (): string | null => {
    if (at >= text.length) return null;
    const feed = text.indexOf("\n", at);
    const end = feed < 0 ? text.length : feed;
    const found = text.slice(at, text.charCodeAt(end - 1) === carriageReturn && end > at ? end - 1 : end);
    at = end + 1;
    line++;
    return found;
  };
  for (;;) {
    const first = nextLine();
    if (first === null) break;
    const code = /^\s*-?\d{1,4}\s*$/.test(first) ? Number(first) : Number.NaN;
    if (Number.isNaN(code)) {
      if (first.trim() === "" && text.slice(at).trim() === "") break;
      return yield { kind: "broken", why: `line ${line} should be the code of a group and is not` };
    }
    const value = nextLine();
    if (value === null) return yield { kind: "broken", why: `it ends within a group, after line ${line}` };
    if (code !== 0) {
      groups.push({ code, value });
      if (groups.length > mostGroups) return yield { kind: "broken", why: "one thing in it goes on without an end" };
      continue;
    }
    if (type !== null) yield { kind: "record", record: { type, groups }, at };
    type = value.trim();
    groups = [];
    if (type === "EOF") return yield { kind: "record", record: { type, groups }, at };
  }
  if (type !== null) yield { kind: "record", record: { type, groups }, at };
  yield { kind: "broken", why: "it ends before its end mark, so that part of it is missing" };
}

const carriageReturn = 13;

/** The value of the first group of a code. */
export function textOf({ groups }: DxfRecord, code: number): string | null {
  return groups.find((group) => group.code === code)?.value ?? null;
}

/** The same as a number; `otherwise` where there is none, NaN where it is no number. */
export function numberOf(record: DxfRecord, code: number, otherwise: number): number {
  const value = textOf(record, code);
  return value === null ? otherwise : numberIn(value);
}

/** A number as DXF writes it; NaN for anything else, and for what is written as a number but is none. */
export function numberIn(value: string): number {
  const trimmed = value.trim();
  return /^[-+]?(\d+\.?\d*|\.\d+)([eEdD][-+]?\d{1,3})?$/.test(trimmed)
    ? Number(trimmed.replace(/[dD]/, "e"))
    : Number.NaN;
}
