/** Text as it may stand in SVG, in an element or an attribute. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => entities[letter] ?? letter);
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** An SVG element as text; numbers are written to a hundredth, attribute values are escaped, the content is taken as it is. */
export function svgTag(name: string, attributes: Readonly<Record<string, string | number>>, content = ""): string {
  const written = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === "number" ? px(value) : escaped(value)}"`,
  );
  return content === "" ? `<${name}${written.join("")}/>` : `<${name}${written.join("")}>${content}</${name}>`;
}

/** A coordinate to a hundredth of a pixel. */
export function px(value: number): string {
  return String(Math.round(value * 100) / 100);
}
