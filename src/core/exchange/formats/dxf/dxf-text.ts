import { isOfCodePage } from "./code-page.ts";

/**
 * Text as it may stand in a line of DXF: letters of the code page, others by their number (`\U+0141`); line ends and control characters as
 * spaces, since a line end would begin the next group. `%%` and `^` have a meaning in TEXT.
 */
export function dxfText(text: string): string {
  return dxfString(text).replaceAll("%%", "%%%%%%").replaceAll("^", "^ ");
}

/** The same for strings that are data and not drawn: nothing but the letters' numbers has a meaning there. */
export function dxfString(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is to go
  const printable = text.replace(/[\u0000-\u001f\u007f-\u009f]+/g, " ");
  // A name that reads as a letter's number has its backslash written by its number.
  return printable.replace(/[^\u0020-\u007e]|\\(?=U\+[0-9a-fA-F]{4})/g, (unit) => {
    if (unit !== "\\" && isOfCodePage(unit)) return unit;
    const code = unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
    return `\\U+${code}`;
  });
}

/** Such a string in pieces of what a group of extended data takes; a letter's number is never cut. */
export function dxfPieces(text: string): readonly string[] {
  const letters = dxfString(text).match(/\\U\+[0-9A-F]{4}|./g) ?? [];
  const pieces: string[] = [];
  let piece = "";
  for (const letter of letters) {
    if (piece.length + letter.length > most) {
      pieces.push(piece);
      piece = "";
    }
    piece += letter;
  }
  return [...pieces, piece];
}

/** Letters of a 1000 group: 255 by the reference of R12, less room for readers that count the end. */
const most = 250;
