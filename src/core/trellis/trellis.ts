import type { EndAssemblyKind, Wire, WirePurpose } from "../project/project.ts";
import type { TrellisLoads } from "./loads.ts";
import type { PartCount } from "./part.ts";

export type WireLengths = Readonly<Partial<Record<WirePurpose, number>>>;

/** Structure and wire of every row. */
export interface Trellis {
  /** What the rows of a block have in common, in the order of the project's blocks. */
  readonly blocks: readonly BlockTrellis[];
  /** In the order of the plan's rows. */
  readonly rows: readonly RowTrellis[];
  readonly wire_m: WireLengths;
  /** Wire told apart by article, in the order they are first met. */
  readonly wires: readonly WireTotal[];
  readonly loads: TrellisLoads;
}

export interface BlockTrellis {
  readonly block: string;
  /** In the order of the block's settings. */
  readonly wires: readonly HungWire[];
  readonly endPost: PostLayout;
  readonly linePost: PostLayout;
  /** Inside every end post of an H-brace; null for other ends. */
  readonly bracePost: PostLayout | null;
  /** null when the block has no stakes. */
  readonly stake: PostLayout | null;
  /** Both ends of a row are built alike. */
  readonly end: EndAssembly;
  /** Bags of dry mix round one end post; 0 without concrete. */
  readonly concreteBags: number;
}

/** A wire as the posts hold it. */
export interface HungWire {
  readonly wire: Wire;
  readonly article: string;
  /** Above the ground; at the nearest notch where posts have notches. */
  readonly height_m: number;
  /** How much farther out than the foot of the end post its support is, at each end; below 0 where posts lean over the row. */
  readonly reach_m: number;
  readonly tieOffStart_m: number;
  readonly tieOffEnd_m: number;
}

/** A post or stake: how long, how high, how deep. */
export interface PostLayout {
  readonly article: string;
  /** As bought. */
  readonly length_m: number;
  /** Height of its top above the ground. */
  readonly top_m: number;
  /** How deep it stands, straight down: what is not needed above goes into the ground. */
  readonly depth_m: number;
  /** Between post and ground; 90 stands upright. */
  readonly angle_deg: number;
  readonly diameter_mm: number | null;
}

/** One end of a row. Distances are along the row, outward from the foot of the end post. */
export interface EndAssembly {
  readonly kind: EndAssemblyKind;
  /** The tie-back to an anchor; null when nothing stands outside. */
  readonly tie: {
    readonly height_m: number;
    /** Where it meets the post, and where the anchor is. */
    readonly postOut_m: number;
    readonly anchorOut_m: number;
    /** Between the tie-back and the ground. */
    readonly angle_deg: number;
    /** From post to anchor, one strand. */
    readonly length_m: number;
    readonly strands: number;
  } | null;
  /** Rail or strut inside the row; null when there is none. */
  readonly brace: {
    readonly height_m: number;
    /** End post to brace post or foot, along the ground. */
    readonly inside_m: number;
    readonly angle_deg: number;
    /** Strut, or the diagonal wire of an H-brace. */
    readonly diagonal_m: number;
  } | null;
}

/** One row's structure. */
export interface RowTrellis {
  /** In the order of the block's wires. */
  readonly runs: readonly WireRun[];
  readonly wire_m: WireLengths;
  readonly stakeClips: number;
  /** Everything the row is built from but its wire runs. */
  readonly parts: readonly PartCount[];
}

/** One wire of a row as it is cut; `count` of them are alike. */
export interface WireRun {
  readonly count: number;
  /** Along the ground between its end supports at its height. */
  readonly supported_m: number;
  /** Supported length and both tie-offs. */
  readonly length_m: number;
}

/** All wire of one article. */
export interface WireTotal {
  readonly article: string;
  readonly purposes: readonly WirePurpose[];
  readonly diameter_mm: number;
  readonly length_m: number;
  /** Wires counted one by one over all rows. */
  readonly runs: number;
  readonly longestRun_m: number;
}
