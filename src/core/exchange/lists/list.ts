export type Cell = string | number | null;

/** What is handed over as a table and has no place on a map. */
export const listKinds = ["materials", "coils", "prices"] as const;
export type ListKind = (typeof listKinds)[number];

/** A table: heads with their units, then lines of as many cells. */
export interface List {
  readonly kind: ListKind;
  readonly heads: readonly string[];
  readonly lines: readonly (readonly Cell[])[];
}
