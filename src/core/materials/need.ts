import type { Phrase } from "../finding.ts";
import type { MaterialKind, SpareRule } from "./catalog.ts";

/** What the structure takes of one article. */
export interface Need {
  readonly article: string;
  readonly kind: MaterialKind;
  /** Name on the list. */
  readonly item: string;
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  readonly diameter_mm: number | null;
  /** In the order of the plan's rows; of what serves several rows the share of each. */
  readonly perRow: readonly number[];
  /** True when the rows share it evenly: it serves them together. */
  readonly isShared: boolean;
  /** Short pieces that it is cut into, such as tie-backs, m; none for what is cut by a cutting plan. */
  readonly pieces_m: readonly number[];
  /** Spare that a planting states, or a part of a trench; null: that of its kind. */
  readonly spare: SpareRule | null;
  readonly purpose: string;
  /** Of one metre or piece; null: not known. */
  readonly mass_kg: number | null;
}
