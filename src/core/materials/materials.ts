/** One line of the shopping list. */
export interface MaterialLine {
  /** What to ask for, such as "Wire, fruiting". */
  readonly item: string;
  /** With spares, before rounding to packages. */
  readonly quantity: number;
  /** "m" or "pieces". */
  readonly unit: "m" | "pieces";
  /** Packages that cover the quantity; size in `unit`. Empty for things sold by the piece. */
  readonly packs: readonly { readonly size: number; readonly count: number }[];
  /** What it is for and how it was counted. */
  readonly purpose: string;
}

export interface Materials {
  readonly lines: readonly MaterialLine[];
}
