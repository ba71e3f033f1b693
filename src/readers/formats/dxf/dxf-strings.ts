/** A string of DXF: letters that are written by their number (`\U+00F1`). */
export function decoded(value: string): string {
  return value.replace(/\\U\+([0-9a-fA-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** What a TEXT shows: degree sign, plus-minus and diameter by their codes, underlines left out. */
export function shownText(value: string): string {
  return decoded(withSigns(value))
    .replace(/\^(.)/g, (_, next: string) => (next === " " ? "^" : " "))
    .trim();
}

function withSigns(value: string): string {
  return value.replace(/%%(%%%|%|[dD]|[pP]|[cC]|[uUoOkK]|\d{3})/g, (_, code: string) => {
    if (code.startsWith("%")) return code === "%" ? "%" : "%%";
    const sign = signs.get(code.toLowerCase());
    return sign ?? (/^\d/.test(code) ? String.fromCharCode(Number(code)) : "");
  });
}

/** What an MTEXT shows, on one line: its marks for fonts, heights and colours left out. */
export function shownParagraphs(value: string): string {
  const plain = withSigns(value)
    .replace(/\\U\+([0-9a-fA-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/\\[PN~]/g, " ")
    .replace(/\\[LlOoKkXx]/g, "")
    .replace(/\\[ACcFfHQTWp][^;\\]{0,200};/g, "")
    .replace(/\\S([^;]{0,200});/g, (_, stack: string) => stack.replace(/[#^]/g, "/"))
    .replace(/(^|[^\\])[{}]+/g, "$1")
    .replace(/\\([\\{}])/g, "$1");
  return plain.replace(/\s+/g, " ").trim();
}

const signs: ReadonlyMap<string, string> = new Map([
  ["d", "°"],
  ["p", "±"],
  ["c", "⌀"],
]);
