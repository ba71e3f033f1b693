import { windows1252 } from "../../windows-1252.ts";

/** How the texts of a table are read. */
export interface Letters {
  /** What they are taken for, and whether the file says so. */
  readonly name: string;
  readonly isStated: boolean;
  decode(bytes: Uint8Array): string;
}

/** Upper half of the code pages of DOS, which no decoder of the platform has (the Unicode consortium's CP437.TXT and CP850.TXT, from memory). */
const cp437 =
  "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0";
const cp850 =
  "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈıÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u00ad±‗¾¶§÷¸°¨·¹³²■\u00a0";

/** The code page of the byte at 29 of a dBASE header, for the ones met ("LDID" of shapelib and of dBASE; from memory). */
const byLanguage: ReadonlyMap<number, string> = new Map([
  ...[0x01, 0x09, 0x0b, 0x0d, 0x0f, 0x11, 0x15, 0x18, 0x19, 0x1b].map((byte) => [byte, "437"] as const),
  ...[0x02, 0x0a, 0x0e, 0x10, 0x12, 0x14, 0x16, 0x1a, 0x1d, 0x25, 0x37].map((byte) => [byte, "850"] as const),
  ...[0x03, 0x57, 0x58, 0x59].map((byte) => [byte, "1252"] as const),
  [0x26, "866"],
  [0x65, "866"],
  [0x13, "932"],
  [0x7b, "932"],
  [0x4d, "936"],
  [0x7a, "936"],
  [0x4e, "949"],
  [0x79, "949"],
  [0x4f, "950"],
  [0x78, "950"],
  [0xc8, "1250"],
  [0xc9, "1251"],
  [0xca, "1254"],
  [0xcb, "1253"],
  [0xcc, "1257"],
]);

/**
 * The letters of a table: by its .cpg, else by the language byte of the table, else UTF-8 where all its texts are that, else Windows-1252
 * (common practice, no source). The language byte 0x57 stands in most tables whatever is in them, so it is held to UTF-8 first.
 * A stated name that is not known, or that the texts are not, falls back in the same way and is not `isStated`.
 */
export function lettersOf(cpg: string | null, language: number, texts: Iterable<Uint8Array>): Letters {
  const page = cpg === null ? null : pageOf(cpg);
  if (page === "utf-8" || page === null) {
    const byByte = cpg === null && language !== 0x57 ? byLanguage.get(language) : undefined;
    if (byByte !== undefined) return decoded(byByte, true);
    const isUtf8 = areUtf8(texts);
    if (isUtf8) return decoded("utf-8", page === "utf-8");
    return decoded("1252", cpg === null && language === 0x57);
  }
  return decoded(page, true);
}

/** "UTF-8", "65001", "ANSI 1252", "ISO-8859-1", "88591", "OEM 850", "LDID/87" to what a decoder is called by; null: not known. */
function pageOf(cpg: string): string | null {
  const text = cpg.trim().toLowerCase();
  if (/^utf-?8$|^65001$/.test(text)) return "utf-8";
  const ldid = /^ldid\/(\d{1,3})$/.exec(text)?.[1];
  if (ldid !== undefined) return byLanguage.get(Number(ldid)) ?? null;
  const iso = /^(?:iso[ _-]*)?8859[ _-]*(\d{1,2})$/.exec(text)?.[1];
  if (iso !== undefined && labelOf(`iso-8859-${iso}`) !== null) return `iso-8859-${iso}`;
  const page = /^(?:ansi|oem|cp|windows|ms|ibm|dos)?[ _-]*(\d{3,5})$/.exec(text)?.[1];
  if (page !== undefined && (page === "437" || page === "850" || labelOf(page) !== null)) return page;
  return labelOf(text) === null ? null : text;
}

function decoded(page: string, isStated: boolean): Letters {
  const table = page === "437" ? cp437 : page === "850" ? cp850 : null;
  if (table !== null) {
    const high = [...table];
    const letter = (byte: number): string => (byte < 128 ? String.fromCharCode(byte) : (high[byte - 128] ?? "\ufffd"));
    return { name: `code page ${page}`, isStated, decode: (bytes) => Array.from(bytes, letter).join("") };
  }
  const label = labelOf(page) ?? "windows-1252";
  const decoder = new TextDecoder(label);
  const name = page === "utf-8" ? "UTF-8" : /^\d+$/.test(page) ? `code page ${page}` : page;
  return { name, isStated, decode: label === "windows-1252" ? windows1252 : (bytes) => decoder.decode(bytes) };
}

const labels: ReadonlyMap<string, string> = new Map([
  ["932", "shift_jis"],
  ["936", "gbk"],
  ["949", "euc-kr"],
  ["950", "big5"],
  ["866", "ibm866"],
  ["20866", "koi8-r"],
  ["28591", "iso-8859-1"],
]);

/** What the platform's decoder calls a code page; null when it has none. */
function labelOf(page: string): string | null {
  const label = labels.get(page) ?? (/^125\d$/.test(page) ? `windows-${page}` : page);
  try {
    return new TextDecoder(label).encoding;
  } catch {
    return null;
  }
}

/** Whether all texts are UTF-8; a letter that was cut at the end of a full field does not count against it. */
function areUtf8(texts: Iterable<Uint8Array>): boolean {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  for (const bytes of texts) {
    if (bytes.every((byte) => byte < 128)) continue;
    try {
      decoder.decode(withoutCutLetter(bytes));
    } catch {
      return false;
    }
  }
  return true;
}

/** Without the beginning of a letter of several bytes at the end. */
export function withoutCutLetter(bytes: Uint8Array): Uint8Array {
  for (let back = 1; back <= 3 && back <= bytes.length; back++) {
    const byte = bytes[bytes.length - back] ?? 0;
    if (byte < 0x80) return bytes;
    if (byte < 0xc0) continue;
    const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
    return back < length ? bytes.subarray(0, bytes.length - back) : bytes;
  }
  return bytes;
}
