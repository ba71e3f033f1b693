import { delimitedLines } from "./delimited-lines.ts";

/** Tried in this order: a comma comes last, because it stands inside numbers too. */
const delimiters = ["\t", ";", "|", ","] as const;
const looked = 50;

/**
 * What the cells of a table are parted by: of tab, semicolon, bar and comma the first that its lines have alike, else the one that most lines
 * have; spaces (null) where there is none of them, and no quotes. A first line "sep=;", which office programs write, says it.
 */
export function delimiterOf(text: string): string | null {
  const stated = /^sep=([\t;|,])\r?\n/i.exec(text)?.[1];
  if (stated !== undefined) return stated;
  const beginning = text.slice(0, 100_000);
  const candidates = delimiters.map((delimiter) => ({ delimiter, ...countsOf(beginning, delimiter) }));
  const even = candidates.find(({ parted, isEven }) => parted > 0 && isEven);
  if (even !== undefined) return even.delimiter;
  const most = candidates.reduce((best, each) => (each.parted > best.parted ? each : best));
  if (most.parted > 0) return most.delimiter;
  return beginning.includes('"') ? "," : null;
}

function countsOf(text: string, delimiter: string): { readonly parted: number; readonly isEven: boolean } {
  const counts: number[] = [];
  for (const line of delimitedLines(text, delimiter)) {
    if (typeof line === "string" || counts.length >= looked) break;
    counts.push(line.cells.length);
  }
  const parted = counts.filter((count) => count > 1);
  return { parted: parted.length, isEven: parted.length === counts.length && new Set(counts).size === 1 };
}
