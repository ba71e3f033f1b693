import type { Phrase } from "../finding.ts";
import type { FeatureKey, PipeSettings } from "../project/project.ts";

/** The trench of a main line: its profile, what lies in it, and the earth that is moved. */
export interface Trench {
  readonly branches: readonly Branch[];
  /** In the order of the branches. */
  readonly profiles: readonly Profile[];
  readonly lows: readonly ProfilePoint[];
  readonly highs: readonly ProfilePoint[];
  readonly conflicts: readonly LaneConflict[];
  readonly bends: readonly Bend[];
  /** What is laid, line by line; without chosen sizes the pipe that is set, a branch each. */
  readonly pipes: readonly LaidPipe[];
  /** The pipes are those that the watering chose. */
  readonly isSized: boolean;
  /** Outside diameters of the pipes that lie side by side where they take most room; and of the thickest, by which the depth goes. */
  readonly abreast_mm: readonly number[];
  readonly thickest_mm: number;
  readonly sleeves: readonly Sleeve[];
  /** Where water pushes the pipe line, the hardest first; blocks are cast only where joints do not hold by themselves. */
  readonly thrusts: readonly Thrust[];
  readonly parts: readonly TrenchPart[];
  readonly earth: Earth;
  /** Ground over the pipe in force: as set, or the frost depth where that is more. */
  readonly cover_m: number;
  /** Horizontal, and along the ground (null where heights are missing). */
  readonly length_m: number;
  readonly groundLength_m: number | null;
  /** Dug beside it: from the tee of every row to its end post, where the tee is outside of it; in the order of the plan's rows. */
  readonly leads_m: readonly number[];
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
  /** Along the ground; level across ground that is not known. */
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
  /** Point of the route, or -1 for a step of the way. */
  readonly point: Int32Array;
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
  /** The pipe that does, by its bore. */
  readonly full: readonly FullPipe[];
  /** Deep or high enough for a drain or an air valve. */
  readonly isFitted: boolean;
  /** Pipes that get one there. */
  readonly fitted: number;
  /** How deep water stands in the open trench; 0 where it runs on and only a pipe ends or dips. */
  readonly pond_m: number;
}

export interface FullPipe {
  readonly inside_mm: number;
  readonly length_m: number;
}

/** A row whose post or anchor is nearer to the trench than it should be, or that leaves the trencher too little room. */
export interface LaneConflict {
  /** -1 where it is a boundary or an obstacle that leaves no room to turn. */
  readonly row: number;
  /** The end of the row it is nearer to. */
  readonly end: "start" | "end";
  readonly what: "post" | "anchor" | "turning";
  readonly distance_m: number;
  readonly least_m: number;
  /** The place on the trench. */
  readonly xy: readonly [x_m: number, y_m: number];
}

/** Fittings that pipe is turned with, degrees; smaller angles the pipe takes by bending. */
export const elbowAngles_deg = [90, 45, 22.5, 11.25] as const;
export type ElbowAngle = (typeof elbowAngles_deg)[number];

/** A place where the line turns in plan. */
export interface Bend {
  /** Of the route. */
  readonly point: number;
  readonly xy: readonly [x_m: number, y_m: number];
  /** 0 goes straight on. */
  readonly angle_deg: number;
  /** Largest first; none where the pipe itself bends. */
  readonly elbows: readonly ElbowAngle[];
}

/** A pipe of one size of one line, laid end to end from where it begins to where its size changes or it ends. */
export interface LaidPipe extends BranchPipe {
  /** 0: the main line; 1 and on: the submain or own line of that set. */
  readonly line: number;
  readonly pipe: PipeSettings;
  /** Where it lies, upstream first. */
  readonly spans: readonly PipeSpan[];
}

/** Horizontal stations of a branch. */
export interface PipeSpan {
  readonly branch: number;
  readonly from_m: number;
  readonly to_m: number;
}

/** A length of pipe laid end to end. */
export interface BranchPipe {
  /** Along the ground, from its tee. */
  readonly length_m: number;
  /** Sticks started for it; for coiled pipe the share of the coils it takes. */
  readonly sticks: number;
  /** Joints between its sticks. */
  readonly joints: number;
  /** Left over of its last stick, and what goes into the bells. */
  readonly waste_m: number;
}

/** What water under pressure does to the line where it turns, parts or ends. */
export interface Thrust {
  readonly at: "bend" | "tee" | "end" | "valve";
  /** Of the elbow; null for what is none. */
  readonly angle_deg: ElbowAngle | null;
  readonly count: number;
  /** Of the pipe. */
  readonly outside_mm: number;
  /** Joints do not hold by themselves there. */
  readonly isBlocked: boolean;
  readonly force_n: number;
  /** Face of a block against undisturbed soil. */
  readonly face_m2: number;
}

export const trenchPartKinds = [
  "main-pipe",
  "pipe-coupling",
  "reducer",
  "row-tee",
  "branch-tee",
  "valve-tee",
  "elbow",
  "swing-joint",
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
  /** Name on the list. */
  readonly item: string;
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  readonly quantity: number;
  /** What each row takes of it, in the order of the plan's rows; null when it serves all of them. */
  readonly perRow: readonly number[] | null;
  /** Lengths that it is cut into, where it is counted in metres. */
  readonly pieces_m: readonly number[];
  /** How it was counted, a half sentence. */
  readonly purpose: string;
  /** Pieces that are bought on top. */
  readonly spare: number;
}

/** Earth moved and time taken: bank is as it lies, loose as it is thrown out. */
export interface Earth {
  /** At the bottom, and at the top where it is deepest. */
  readonly width_m: number;
  readonly topWidth_m: number;
  /** Route and leads together. */
  readonly dug_m: number;
  /** Cut, pipe, bedding, backfill, surplus: bank. */
  readonly cut_m3: number;
  readonly pipe_m3: number;
  readonly bedding_m3: number;
  readonly backfill_m3: number;
  readonly surplus_m3: number;
  readonly swell_ratio: number;
  readonly loose_m3: number;
  /** Heap beside the trench at 1.5 to 1. */
  readonly heapHeight_m: number;
  readonly heapBase_m: number;
  /** By the clock, all people or the machine at it: digging, laying pipe, filling back; and together. */
  readonly digging_h: Range;
  readonly laying_h: Range;
  readonly filling_h: Range;
  readonly hours_h: Range;
  /** Trench to open in a day: dug, piped, tested and half filled before it rains. */
  readonly daily_m: Range;
  readonly days: Range;
  readonly deepest_m: number;
  readonly deepestAt: readonly [x_m: number, y_m: number];
}

export type Range = readonly [least: number, most: number];

/** What a crossing takes. */
export interface Sleeve {
  readonly feature: FeatureKey;
  readonly name: string | null;
  /** Middle of the crossing. */
  readonly xy: readonly [x_m: number, y_m: number];
  readonly length_m: number;
  /** Outside diameters of the pipes that go through, each in a sleeve of its own. */
  readonly outside_mm: readonly number[];
}
