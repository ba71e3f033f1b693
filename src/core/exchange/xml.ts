/** Text as it may stand in XML, between tags and in attributes; control characters that XML has no place for are left out. */
export function xmlText(text: string): string {
  return text
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "")
    .replace(/[&<>"']/g, escaped);
}

function escaped(mark: string): string {
  return entities[mark] ?? mark;
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

/** Attributes of an element, each with a space before it; those without a value are left out. */
export function xmlAttributes(attributes: Readonly<Record<string, string | number | null>>): string {
  return Object.entries(attributes)
    .map(([name, value]) => (value === null ? "" : ` ${name}="${xmlText(String(value))}"`))
    .join("");
}
