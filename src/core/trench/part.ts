import type { TrenchPart, TrenchPartKind } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";

/** Plain pieces that serve all rows, sold singly. */
export function counted(kind: TrenchPartKind, quantity: number, purpose: string): TrenchPart {
  return { kind, article: kind, spec: [], unit: "pieces", quantity, perRow: null, pieces_m: [], purpose, pack: 1 };
}

/** What each row takes for itself, by its tee. */
export function perRow(
  kind: TrenchPartKind,
  { rows, tees }: Pick<TrenchLine, "rows" | "tees">,
  of: (tee: TrenchLine["tees"][number]) => number,
  purpose: string,
): TrenchPart {
  const each = rows.rows.map(() => 0);
  for (const tee of tees) each[tee.row] = Number(each[tee.row]) + of(tee);
  const quantity = each.reduce((sum, one) => sum + one, 0);
  const taking = each.filter((one) => one > 0).length;
  return { ...counted(kind, quantity, `${purpose}; ${rowsInWords(taking)}`), perRow: each };
}

/** The rows that the line feeds, in words. */
export function forRows({ tees }: Pick<TrenchLine, "tees">): string {
  return rowsInWords(tees.length);
}

function rowsInWords(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}
