/** Kinds of things a trellis is built from, wire runs aside. */
export type PartKind =
  | "end-post"
  | "line-post"
  | "brace-post"
  | "brace-rail"
  | "brace-strut"
  | "brace-pin"
  | "brace-foot"
  | "brace-wire"
  | "anchor"
  | "buried-anchor"
  | "tie-wire"
  | "tie-gripper"
  | "concrete-bag"
  | "stake"
  | "stake-clip"
  | "staple"
  | "wire-clip"
  | "eye-bolt"
  | "wire-hook"
  | "gripper"
  | "crimp-sleeve"
  | "tensioner";

/** Something that is bought: all parts of one article are alike. */
export interface Part {
  /** Plain text that names it in price lists and in stock: "line-post-2.4m", "staple", "wire-13ga". */
  readonly article: string;
  readonly kind: PartKind;
  readonly unit: "m" | "pieces";
  /** Length of a post, rail, strut or stake; null for what has none. */
  readonly length_m: number | null;
  /** Thickness of posts and wire; null for what has none. */
  readonly diameter_mm: number | null;
}

export interface PartCount {
  readonly part: Part;
  /** Pieces, or metres for wire. */
  readonly quantity: number;
}
