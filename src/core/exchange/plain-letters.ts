/** Letters that a format keeps: any, ASCII, or letters and digits with a few marks that no reader takes for anything else. */
export type Letters = "any" | "ascii" | "code";

/** Letters that do not come apart into a plain one and a mark, and signs that have a plain likeness. */
const likeness: Readonly<Record<string, string>> = {
  ß: "ss",
  ẞ: "SS",
  æ: "ae",
  Æ: "AE",
  œ: "oe",
  Œ: "OE",
  ø: "o",
  Ø: "O",
  ł: "l",
  Ł: "L",
  đ: "d",
  Đ: "D",
  ð: "d",
  Ð: "D",
  þ: "th",
  Þ: "Th",
  ħ: "h",
  Ħ: "H",
  ı: "i",
  ŋ: "n",
  "–": "-",
  "—": "-",
  "‐": "-",
  "‑": "-",
  "−": "-",
  "‘": "'",
  "’": "'",
  "“": '"',
  "”": '"',
  "„": '"',
  "«": '"',
  "»": '"',
  "…": "...",
  "×": "x",
  "·": ".",
  "№": "No",
  º: "o",
  ª: "a",
};

/** A text in ASCII: marks over letters go, a few letters and signs are written out, each other letter is an underline. */
export function plainLetters(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: ASCII begins with them
  if (/^[\u0000-\u007f]*$/.test(text)) return text;
  return Array.from(text.normalize("NFKD").replace(/\p{M}/gu, ""), (letter) => {
    const plain = likeness[letter];
    if (plain !== undefined) return plain;
    if (/\p{Zs}/u.test(letter)) return " ";
    return letter <= "\u007f" ? letter : "_";
  }).join("");
}

/** A text in ASCII letters, digits and `-._#`, beginning with a letter or digit; each other sign is an underline. */
export function codeLetters(text: string): string {
  return plainLetters(text)
    .replace(/[^A-Za-z0-9._#-]+/g, "_")
    .replace(/^[-.#]+/, "_");
}
