import type { TrenchPart, TrenchPartKind } from "./trench.ts";
import type { TappedTee, TrenchLine } from "./trench-line.ts";

/** What one asks for in a shop, in the order it is laid. */
const items: Readonly<Record<TrenchPartKind, string>> = {
  "main-pipe": "Main line pipe",
  "pipe-coupling": "Pipe couplings",
  reducer: "Reducers",
  sleeve: "Sleeves",
  "branch-tee": "Branch tees",
  "valve-tee": "Tees for drains and air valves",
  elbow: "Elbows",
  "main-valve": "Main valve",
  "pipe-cap": "Pipe caps",
  "drain-valve": "Drain valves",
  "air-valve": "Air valves",
  "thrust-block": "Thrust blocks",
  "row-tee": "Row tees",
  "swing-joint": "Swing joints",
  riser: "Riser pipe",
  "riser-adapter": "Riser adapters",
  primer: "Primer",
  cement: "Solvent cement",
  bedding: "Bedding",
};

/** One more of what breaks or is miscut. Common practice, no source. */
const withSpare: readonly TrenchPartKind[] = ["main-pipe", "pipe-coupling", "row-tee", "riser-adapter"];

/** Plain pieces that serve all rows, bought singly. */
export function counted(kind: TrenchPartKind, quantity: number, purpose: string): TrenchPart {
  return {
    kind,
    article: kind,
    item: items[kind],
    spec: [],
    unit: "pieces",
    quantity,
    perRow: null,
    pieces_m: [],
    purpose,
    spare: withSpare.includes(kind) ? 1 : 0,
  };
}

/** What each row takes for itself, by its tee. */
export function perRow(
  kind: TrenchPartKind,
  { rows, tees }: Pick<TrenchLine, "rows" | "tees">,
  of: (tee: TappedTee) => number,
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
