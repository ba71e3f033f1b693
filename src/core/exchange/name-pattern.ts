import type { Named } from "./layers/layer.ts";

/** What stands between braces in a pattern of names. */
export const nameTokens = ["id", "kind", "code", "block", "row", "number"] as const;
export type NameToken = (typeof nameTokens)[number];

/** A pattern taken apart: text that stays as it is, and tokens. */
export type NamePiece =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "token"; readonly token: NameToken; readonly width: number | null };

const inBraces = /\{[^{}]*\}/g;
const aToken = /^\{\s*(\w+)\s*(?::\s*(\d{1,2})\s*)?\}$/;

/** A pattern taken apart, with what stands between braces and is no token; that is left in the names as it is. */
export function piecesOf(pattern: string): {
  readonly pieces: readonly NamePiece[];
  readonly unknown: readonly string[];
} {
  const pieces: NamePiece[] = [];
  const unknown: string[] = [];
  let at = 0;
  const text = (to: number) => {
    if (to > at) pieces.push({ kind: "text", text: pattern.slice(at, to) });
  };
  for (const found of pattern.matchAll(inBraces)) {
    const [whole] = found;
    const [, name = "", width] = aToken.exec(whole) ?? [];
    const token = nameTokens.find((each) => each === name.toLowerCase());
    if (token === undefined) {
      unknown.push(whole);
      continue;
    }
    text(found.index);
    pieces.push({ kind: "token", token, width: width === undefined ? null : Number(width) });
    at = found.index + whole.length;
  }
  text(pattern.length);
  return { pieces, unknown };
}

const separators = " \\-_./,:;+";
const leading = new RegExp(`^[${separators}]+`);
const trailing = new RegExp(`[${separators}]+$`);

/**
 * The name of a thing by a pattern. A token without a value leaves nothing, nor the separator before it; `longest` shortens the words
 * of kind and block first, down to a letter, then cuts from the front: what tells things apart stands at the end.
 */
export function nameBy(pieces: readonly NamePiece[], thing: Named, longest: number | null): string {
  const texts = pieces.map((piece) => (piece.kind === "text" ? piece.text : valueFor(piece, thing)));
  const whole = joined(pieces, texts);
  if (longest === null || whole.length <= longest) return whole;
  for (const token of ["kind", "block"]) {
    for (const [i, piece] of pieces.entries()) {
      const over = letters(joined(pieces, texts)).length - longest;
      if (over <= 0 || piece.kind === "text" || piece.token !== token) continue;
      const own = letters(texts[i] ?? "");
      texts[i] = own.slice(0, Math.max(1, own.length - over)).join("");
    }
  }
  return cutFront(joined(pieces, texts), longest);
}

/** The last letters of a name, without a separator at its new beginning. */
export function cutFront(name: string, longest: number): string {
  const all = letters(name);
  return all.length <= longest
    ? name
    : all
        .slice(all.length - longest)
        .join("")
        .replace(leading, "");
}

/** The first letters of a name, without a separator at its new end. */
export function cutBack(name: string, longest: number): string {
  const all = letters(name);
  return all.length <= longest ? name : all.slice(0, longest).join("").replace(trailing, "");
}

function letters(text: string): readonly string[] {
  return Array.from(text);
}

function joined(pieces: readonly NamePiece[], texts: readonly string[]): string {
  let name = "";
  let isAfterNothing = false;
  pieces.forEach((piece, i) => {
    const text = texts[i] ?? "";
    if (piece.kind === "token" && text === "") {
      name = name.replace(trailing, "");
      isAfterNothing = true;
    } else {
      name += isAfterNothing && name === "" ? text.replace(leading, "") : text;
      if (piece.kind === "token") isAfterNothing = false;
    }
  });
  return name;
}

function valueFor(
  { token, width }: { readonly token: NameToken; readonly width: number | null },
  { id, parts }: Named,
): string {
  switch (token) {
    case "number":
      return parts.number === null ? "" : padded(String(parts.number), width);
    case "row":
      return parts.row === null ? "" : padded(parts.row, width);
    case "id":
      return first(id, width);
    case "kind":
    case "code":
    case "block":
      return first(parts[token] ?? "", width);
    default:
      return token satisfies never;
  }
}

/** Leading zeros before the digits that a text begins with: "14a" is "014a" at three. */
function padded(text: string, width: number | null): string {
  if (width === null) return text;
  const digits = /^\d+/.exec(text)?.[0] ?? "";
  return digits === "" ? text : digits.padStart(width, "0") + text.slice(digits.length);
}

function first(text: string, width: number | null): string {
  return width === null ? text : letters(text).slice(0, width).join("");
}
