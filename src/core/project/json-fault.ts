/** What keeps a text from being JSON, and where it stands, both counted from 1. */
export interface JsonFault {
  readonly kind: "ended-early" | "not-a-number" | "unexpected";
  /** The word or mark that was found there. */
  readonly found: string;
  readonly line: number;
  readonly column: number;
}

type Expected = "value" | "value-or-end" | "key" | "key-or-end" | "colon" | "comma-or-end";

const scalar = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const blank = /[ \t\n\r]*/y;
const word = /-?[A-Za-z_][\w-]*|[\s\S]/uy;

/**
 * The first place where a text stops being JSON. To be asked only when JSON.parse has refused it: parsers name that place
 * in their own words or not at all. Walks the text once, with a list of open brackets in place of recursion.
 */
export function jsonFault(text: string): JsonFault {
  const open: string[] = [];
  let expected: Expected = "value";
  let at = 0;
  for (;;) {
    at = endOf(blank, text, at);
    const mark = text.charAt(at);
    if (mark === "") return fault(text, at, "ended-early", "");
    const isOpening = mark === "{" || mark === "[";
    const isClosing = mark === (open.at(-1) === "{" ? "}" : "]") && open.length > 0;
    const wantsValue: boolean = expected === "value" || expected === "value-or-end";
    if (isClosing && (expected === "comma-or-end" || expected === "value-or-end" || expected === "key-or-end")) {
      open.pop();
      expected = "comma-or-end";
      at++;
    } else if (mark === "," && expected === "comma-or-end" && open.length > 0) {
      expected = open.at(-1) === "{" ? "key" : "value";
      at++;
    } else if (mark === ":" && expected === "colon") {
      expected = "value";
      at++;
    } else if (wantsValue && isOpening) {
      open.push(mark);
      expected = mark === "{" ? "key-or-end" : "value-or-end";
      at++;
    } else if (mark === '"' && (wantsValue || expected === "key" || expected === "key-or-end")) {
      const end = endOfString(text, at);
      if (end === null) return fault(text, text.length, "ended-early", "");
      if (text.charAt(end - 1) !== '"') return unexpected(text, end);
      expected = wantsValue ? "comma-or-end" : "colon";
      at = end;
    } else {
      const end = wantsValue ? endOf(scalar, text, at) : at;
      if (end === at) return unexpected(text, at);
      expected = "comma-or-end";
      at = end;
    }
  }
}

/** Where a pattern that is tried at a place ends; the place itself when it does not fit. */
function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return at + (pattern.exec(text)?.[0].length ?? 0);
}

/** Just after the closing quote, at the first character that may not stand in a string, or null when the text ends within it. */
function endOfString(text: string, at: number): number | null {
  for (let i = at + 1; i < text.length; i++) {
    const mark = text.charCodeAt(i);
    if (mark === 0x22) return i + 1;
    if (mark < 0x20) return i;
    if (mark === 0x5c) {
      const escaped = /["\\/bfnrt]|u[\da-fA-F]{4}/y;
      const end = endOf(escaped, text, i + 1);
      if (end === i + 1) return i + 6 > text.length ? null : i;
      i = end - 1;
    }
  }
  return null;
}

function unexpected(text: string, at: number): JsonFault {
  word.lastIndex = at;
  const found = word.exec(text)?.[0] ?? "";
  const kind = /^-?(?:nan|inf(?:inity)?)$/i.test(found) ? "not-a-number" : "unexpected";
  return fault(text, at, kind, found.length > 30 ? `${found.slice(0, 30)}…` : found);
}

function fault(text: string, at: number, kind: JsonFault["kind"], found: string): JsonFault {
  let line = 1;
  let start = 0;
  for (let next = text.indexOf("\n"); next >= 0 && next < at; next = text.indexOf("\n", start)) {
    line++;
    start = next + 1;
  }
  return { kind, found, line, column: at - start + 1 };
}
