/** The code page that drawings are written in: what `$DWGCODEPAGE` calls ANSI_1252. */
export const codePageName = "ANSI_1252";

/**
 * Whether a letter stands in a drawing as it is: those that the code page has in common with Latin-1, for which some readers take it; its dashes,
 * quotes and euro sign are written by their number.
 */
export function isOfCodePage(letter: string): boolean {
  return /^[\u0020-\u007e\u00a0-\u00ff]$/.test(letter);
}

/** A text of such letters as bytes. */
export function codePageBytes(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}
