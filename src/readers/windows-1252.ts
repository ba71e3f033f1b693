/**
 * Bytes in the code page Windows-1252 as text. Some programs that run this take the name for Latin-1, which has control characters where the code
 * page has dashes, quotes and the euro sign. Source: WHATWG Encoding standard, index windows-1252.
 */
export function windows1252(bytes: Uint8Array): string {
  return new TextDecoder("windows-1252").decode(bytes).replace(/[\u0080-\u009f]/g, (letter) => {
    return beyondLatin1[letter.charCodeAt(0) - 0x80] ?? letter;
  });
}

/** 0x80 to 0x9f; five of them stay what they are. */
const beyondLatin1 = "€\u{81}‚ƒ„…†‡ˆ‰Š‹Œ\u{8d}Ž\u{8f}\u{90}‘’“”•–—˜™š›œ\u{9d}žŸ";
