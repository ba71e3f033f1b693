const width = 100;

/** Text in lines of at most 100 letters, broken at spaces but not between a number and its unit; every line begins with the indent. */
export function wrapped(text: string, indent: string): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(/(?<!\d) /)) {
    const isFirst = line === indent;
    if (!isFirst && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line += isFirst ? word : ` ${word}`;
  }
  return [...lines, line].map((each) => `${each}\n`).join("");
}
