import type { Cause } from "../ground/ground.ts";
import type { PlanePoint } from "../plane/coordinate.ts";
import type { FeatureKey } from "../project/project.ts";

/** Positions along rows, as parallel arrays: those of row i are offsets[i] to offsets[i + 1], stations ascending. */
export interface Positions {
  readonly offsets: Uint32Array;
  readonly station_m: Float64Array;
  /** x, y pairs, plane metres. */
  readonly xy: Float64Array;
}

/** One planted line piece with two end posts of its own. */
export interface Row {
  /** "14", "14a"; "east-14a" when the project has several blocks. Unique in the plan. */
  readonly id: string;
  readonly block: string;
  /** Number of the line, 1 on the first side. */
  readonly number: number;
  /** End posts. Stations run from the start. */
  readonly start: PlanePoint;
  readonly end: PlanePoint;
  /** End post to end post, horizontal; the taped length where one is given. */
  readonly length_m: number;
  /** Along the ground; equal to `length_m` on flat ground. */
  readonly groundLength_m: number;
  /** Steepest ground along the row, above 0 where it rises towards the end; null on flat ground and where heights are not known. */
  readonly slopeAlong_ratio: number | null;
  /** Steepest across it, above 0 where it rises to the right of who looks from start to end. */
  readonly slopeAcross_ratio: number | null;
  /** Where the ground falls to in the mean (aspect), clockwise from true north; null also where it lies level. */
  readonly aspect_deg: number | null;
  /** Unused ground at each end, up to the cut (not counting headland and setback). */
  readonly startLeftover_m: number;
  readonly endLeftover_m: number;
  /** What ended the row there; null for a row that stands already. */
  readonly startCut: Cause | null;
  readonly endCut: Cause | null;
  /** The `row` feature it was taken from, or null for a computed row. */
  readonly given: FeatureKey | null;
  readonly vines: number;
  readonly linePosts: number;
  readonly stakes: number;
}

/** Result of one block. `rows[first]` to `rows[first + count - 1]` of the plan are its rows. */
export interface BlockRows {
  readonly block: string;
  /** Bearing of the rows, clockwise from true north at the block's centre, in [0, 180). */
  readonly bearing_deg: number;
  /** Bearing against the frame's grid north, the direction rows really have in the plane, in [0, 180). */
  readonly gridBearing_deg: number;
  readonly rowSpacing_m: number;
  readonly first: number;
  readonly count: number;
  readonly length_m: number;
  /** Pieces left out because they are under the shortest row. */
  readonly shortPieces: number;
  readonly shortLength_m: number;
  /** Planted area: row length times row spacing. */
  readonly plantedArea_m2: number;
}

export interface Rows {
  readonly rows: readonly Row[];
  readonly blocks: readonly BlockRows[];
  readonly vines: Positions;
  readonly linePosts: Positions;
  readonly stakes: Positions;
}

/** One bearing of the sweep. */
export interface SweepPoint {
  readonly bearing_deg: number;
  /** Sum of the rows' lengths, as planned at this bearing. */
  readonly rowLength_m: number;
  readonly rows: number;
  /** Plantable pieces that are under the shortest row and so left out. */
  readonly shortRows: number;
  readonly meanLength_m: number;
  /** Planted area over the block's parcel area. */
  readonly plantedShare: number;
  /** Row length less the metre-equivalent per row for its two ends. */
  readonly score_m: number;
  readonly locked: boolean;
}

export interface Sweep {
  readonly block: string;
  readonly points: readonly SweepPoint[];
  /** Highest score outside the locked ranges; null when all are locked or nothing can be planted. */
  readonly best: SweepPoint | null;
}
