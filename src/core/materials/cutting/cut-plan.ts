/** One piece cut from a coil: the part of a run from one place to another, joined to its neighbours where it is not the whole. */
export interface Cut {
  /** Place in the job's runs. */
  readonly run: number;
  readonly from_m: number;
  readonly to_m: number;
  /** What comes off the spool: the piece, half the join's wire at each joined end, and the slop. */
  readonly taken_m: number;
  /** What is on the spool after it. */
  readonly left_m: number;
}

export interface CutCoil {
  readonly isOnHand: boolean;
  readonly length_m: number;
  /** In the order of work. */
  readonly cuts: readonly Cut[];
  /** On the spool at the end, reserve included. */
  readonly left_m: number;
}

/** Why fewer coils, or less cost, cannot be had: "length" from the total alone, "pairs" from which pieces can share a coil, "linear-program" from its fractional optimum, "search" from trying all. */
export interface CutBound {
  readonly by: "length" | "pairs" | "linear-program" | "search";
  /** At least so many bought coils, whatever their size. */
  readonly coils: number;
  /** At least so much in the measure that was minimised: price, or metres bought where not every size has a price. */
  readonly least: number;
}

/** One way to cut everything, as an order of work. */
export interface CutAnswer {
  readonly coils: readonly CutCoil[];
  /** Bought coils by size, as many as are needed; sizes that none is needed of left out. */
  readonly bought: readonly { readonly length_m: number; readonly count: number }[];
  readonly boughtCount: number;
  readonly bought_m: number;
  readonly joins: number;
  /** Coils and joins; null where a price is missing. */
  readonly price: number | null;
  readonly bound: CutBound;
  /** True when the bound is met: nothing better exists. */
  readonly isOptimal: boolean;
}

export interface CutPlan {
  /** Without a join; null when a run is longer than any coil, or no coil can be had. */
  readonly noJoins: CutAnswer | null;
  /** Fewest coils (least cost where all is priced), joined where it must be; null when joins are forbidden or nothing is gained. */
  readonly fewestCoils: CutAnswer | null;
  /** The one that is bought for. */
  readonly chosen: "noJoins" | "fewestCoils" | null;
  /** Runs that no coil and no join can give. */
  readonly uncut: readonly number[];
}
