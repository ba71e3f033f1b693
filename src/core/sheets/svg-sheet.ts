import { px, svgTag } from "./svg-text.ts";

type Attributes = Readonly<Record<string, string | number>>;

/** A whole drawing as one SVG text; a picture for those who do not see it, unless it is hidden from them. */
export function svgSheet(
  name: string,
  { width, height, ...more }: Attributes & { readonly width: number; readonly height: number },
  content: string,
): string {
  const size = `0 0 ${px(width)} ${px(height)}`;
  const role: Attributes = more["aria-hidden"] === undefined ? { role: "img" } : {};
  return svgTag(
    "svg",
    { xmlns: "http://www.w3.org/2000/svg", class: name, width, height, viewBox: size, ...role, ...more },
    content,
  );
}

/** Sentences in lines of so many pixels, by the usual width of a letter. */
export function wrappedLines(sentences: readonly string[], width_px: number): readonly string[] {
  const most = Math.max(24, Math.floor(width_px / 6.6));
  const lines: string[] = [];
  let line = "";
  for (const word of sentences.join(" ").split(" ")) {
    if (line !== "" && line.length + 1 + word.length > most) {
      lines.push(line);
      line = word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return line === "" ? lines : [...lines, line];
}
