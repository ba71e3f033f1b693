/** An element of a machine-written text: what stands in its tag, and what between its tags. */
export interface TextElement {
  readonly attributes: string;
  readonly inside: string;
}

/** Elements of one name, with any prefix, which do not nest; one that does not end is left out with all behind it, so that no text takes long. */
export function elementsIn(name: string): (text: string) => Generator<TextElement> {
  const open = new RegExp(`<(?:[\\w.-]+:)?${name}(?=[\\s/>])([^>]*)>`, "g");
  const close = new RegExp(`</(?:[\\w.-]+:)?${name}\\s*>`, "g");
  return function* elements(text) {
    let at = 0;
    for (;;) {
      open.lastIndex = at;
      const start = open.exec(text);
      if (start === null) return;
      const [all, attributes = ""] = start;
      const from = start.index + all.length;
      if (attributes.endsWith("/")) {
        at = from;
        yield { attributes: attributes.slice(0, -1), inside: "" };
        continue;
      }
      close.lastIndex = from;
      const end = close.exec(text);
      if (end === null) return;
      at = end.index + end[0].length;
      yield { attributes, inside: text.slice(from, end.index) };
    }
  };
}
