import type { Phrase } from "../finding.ts";
import type { FeatureKey } from "../project/project.ts";

/** The trench of a main line: its profile, what lies in it, and the earth that is moved. */
export interface Trench {
  readonly branches: readonly Branch[];
  /** In the order of the branches. */
  readonly profiles: readonly Profile[];
  readonly lows: readonly ProfilePoint[];
  readonly highs: readonly ProfilePoint[];
  readonly conflicts: readonly LaneConflict[];
  readonly parts: readonly TrenchPart[];
  readonly earth: Earth;
  /** Horizontal, and along the ground (null where heights are missing). */
  readonly length_m: number;
  readonly groundLength_m: number | null;
}

/** A run of the route without a junction inside: the first one leaves the source. */
export interface Branch {
  /** "main", then "a", "b", … in the order they leave the line. */
  readonly name: string;
  /** Points of the route, from the upstream end. */
  readonly points: readonly number[];
}

/** Ground and trench along a branch, as parallel arrays; heights are NaN where the ground is not known. */
export interface Profile {
  /** Horizontal, from the upstream end of the branch; every bend, tee and step of the way. */
  readonly station_m: Float64Array;
  /** Along the ground. */
  readonly slopeStation_m: Float64Array;
  /** x, y pairs. */
  readonly xy: Float64Array;
  readonly ground_m: Float64Array;
  /** Middle of the pipe. */
  readonly pipe_m: Float64Array;
  readonly bottom_m: Float64Array;
  /** Ground less bottom; known on unknown ground too. */
  readonly depth_m: Float64Array;
  /** Row with its tee there, or -1. */
  readonly row: Int32Array;
}

/** Where water gathers, or air. */
export interface ProfilePoint {
  readonly branch: number;
  readonly station_m: number;
  readonly xy: readonly [x_m: number, y_m: number];
  readonly height_m: number;
  /** How far below its lower shoulder a low point is, or above the higher foot a high point is. */
  readonly by_m: number;
  /** Of pipe that stays full behind a low point. */
  readonly trapped_l: number;
  /** Deep or high enough for a drain or an air valve. */
  readonly isFitted: boolean;
}

/** A row whose post or anchor is nearer to the trench than it should be, or that leaves the trencher too little room. */
export interface LaneConflict {
  readonly row: number;
  readonly end: "start" | "end";
  readonly what: "post" | "anchor" | "turning";
  readonly distance_m: number;
  readonly least_m: number;
}

export const trenchPartKinds = [
  "main-pipe",
  "pipe-coupling",
  "row-tee",
  "branch-tee",
  "elbow",
  "riser",
  "riser-adapter",
  "main-valve",
  "pipe-cap",
  "drain-valve",
  "air-valve",
  "thrust-block",
  "sleeve",
  "primer",
  "cement",
  "bedding",
] as const;
export type TrenchPartKind = (typeof trenchPartKinds)[number];

/** Pieces or metres of one article that the trench takes. */
export interface TrenchPart {
  readonly kind: TrenchPartKind;
  readonly article: string;
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  readonly quantity: number;
  /** What each row takes of it, in the order of the plan's rows; null when it serves all of them. */
  readonly perRow: readonly number[] | null;
  /** How it was counted, a half sentence. */
  readonly purpose: string;
  /** Length or count of a package, where the price list names none. */
  readonly pack: number;
}

/** Earth moved: bank is as it lies, loose as it is thrown out. */
export interface Earth {
  readonly width_m: number;
  readonly cut_m3: number;
  readonly pipe_m3: number;
  readonly bedding_m3: number;
  readonly backfill_m3: number;
  readonly surplus_m3: number;
  readonly loose_m3: number;
  readonly heapHeight_m: number;
  readonly heapBase_m: number;
  readonly hours_h: readonly [least: number, most: number];
  /** Trench to open in a day: dug, piped, tested and half filled before it rains. */
  readonly daily_m: readonly [least: number, most: number];
  readonly deepest_m: number;
}

/** What a crossing takes. */
export interface Sleeve {
  readonly feature: FeatureKey;
  readonly length_m: number;
}
