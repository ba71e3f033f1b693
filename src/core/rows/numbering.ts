import type { RowDraft } from "./row-draft.ts";

export interface Numbered {
  readonly row: RowDraft;
  readonly number: number;
  /** "14", or "14a" where the line holds several rows. */
  readonly label: string;
}

/** Lines this near to each other are one line. */
const sameLine_m = 1e-6;

/**
 * Rows in the order they are numbered: lines from the first side, within a line from the start; rows of one line share its number and
 * are told apart by letters.
 */
export function numbered(rows: readonly RowDraft[], firstSide: "left" | "right"): readonly Numbered[] {
  const order = (row: RowDraft) => (firstSide === "left" ? row.across_m : -row.across_m);
  const sorted = [...rows].sort((a, b) => order(a) - order(b));
  const lines: RowDraft[][] = [];
  for (const row of sorted) {
    const line = lines.at(-1);
    const first = line?.[0];
    if (line !== undefined && first !== undefined && order(row) - order(first) <= sameLine_m) line.push(row);
    else lines.push([row]);
  }
  return lines.flatMap((line, i) => {
    const number = i + 1;
    line.sort((a, b) => a.along_m - b.along_m);
    return line.map((row, n) => ({ row, number, label: line.length === 1 ? `${number}` : `${number}${letters(n)}` }));
  });
}

/** a to z, then aa, ab and on. */
function letters(n: number): string {
  const last = String.fromCharCode(97 + (n % 26));
  return n < 26 ? last : letters(Math.floor(n / 26) - 1) + last;
}
