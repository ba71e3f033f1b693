/** A run of wire or hose to be cut from coils of one article. */
export interface CutRun {
  /** Place of its row in the plan's rows, and of the wire in the block's wires (0 for hose); 1 for the second of a pair. */
  readonly row: number;
  readonly wire: number;
  readonly copy: number;
  readonly length_m: number;
  /** Where it may be joined, metres from its start, ascending; empty where it may not. */
  readonly joinsAt_m: readonly number[];
}

/** A size of coil that can be bought. */
export interface CoilSize {
  readonly length_m: number;
  readonly price: number | null;
  readonly mass_kg: number | null;
}

/** Everything that has to be cut from one article. */
export interface CutJob {
  readonly article: string;
  /** In the order of the rows. */
  readonly runs: readonly CutRun[];
  /** Coils and part coils that are there already, m. */
  readonly onHand_m: readonly number[];
  readonly sizes: readonly CoilSize[];
  /** Sizes that are heavier than the person can handle: not bought. */
  readonly tooHeavy: readonly CoilSize[];
  readonly reserve_ratio: number;
  readonly reserve_m: number;
  readonly slop_m: number;
  readonly joinLength_m: number;
  /** Price of a join; null: not priced. */
  readonly joinPrice: number | null;
}
