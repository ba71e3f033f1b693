import type { Frame } from "../plane/frame.ts";
import type { PlantingParts } from "../plane/overlay.ts";
import type { FeatureKey } from "../project/project.ts";
import type { Elevation } from "./elevation.ts";

/** Straight pieces in the plane that planting keeps a distance from, as parallel arrays. */
export interface Segments {
  /** x1, y1, x2, y2 of each segment, plane metres; a point is a segment of length 0. */
  readonly xy: Float64Array;
  readonly distance_m: Float64Array;
  /** Index into `Ground.causes`. */
  readonly cause: Int32Array;
}

/** Closed rings in the plane: x, y pairs, ring r takes points ringStart[r] to ringStart[r + 1]; the closing edge is implied. */
export interface Rings {
  readonly xy: Float64Array;
  readonly ringStart: Int32Array;
}

/** What can end a row. */
export interface Cause {
  readonly kind: "edge" | "obstacle" | "no-plant" | "cross-alley" | "block";
  readonly feature: FeatureKey;
  /** For an edge of an outline: number of the edge within its feature, counted from 1 over all rings. */
  readonly edge: number | null;
  readonly name: string | null;
}

/** A polygon in the plane with the cause of each of its edges (same order as the points of `rings`). */
export interface Outline {
  readonly rings: Rings;
  readonly cause: Int32Array;
}

/** An area that planting stays out of wholly; its edges stand in `segments` as well when it has a distance. */
export interface Closed extends Outline {
  readonly feature: FeatureKey;
}

/** The ground of one block. */
export interface BlockGround {
  readonly block: string;
  /** Parcel area that the block has, before setbacks. */
  readonly area_m2: number;
  /** Even-odd within one outline, united over the list. */
  readonly outlines: readonly Outline[];
  /**
   * Areas that bound the block within the parcels: drawn for it, it lies in any of them; not drawn, each is what another block's area
   * leaves, and it lies in all of them. Empty when the block takes the whole parcels.
   */
  readonly areas: readonly Outline[];
  /** True when the areas are the block's own; false when they are what other blocks leave, or none. */
  readonly isDrawn: boolean;
  readonly closed: readonly Closed[];
  readonly segments: Segments;
  /** Features that wires run past: each by itself, because a gap is judged as a whole. */
  readonly passable: readonly Passable[];
  /** Middle by area of what was drawn for the block, else of all parcels; plane metres. Where its bearing is true. */
  readonly centre: readonly [x_m: number, y_m: number];
  readonly convergence_deg: number;
}

export interface Passable {
  readonly feature: FeatureKey;
  readonly segments: Segments;
  readonly closed: readonly Closed[];
  readonly largestGap_m: number | null;
}

export interface Ground {
  readonly frame: Frame;
  readonly elevation: Elevation;
  readonly parcelArea_m2: number;
  /** What the planting area is worked out from. */
  readonly plantingParts: PlantingParts;
  /** Parcel less setbacks and obstacles, before headlands; null while it is not worked out. Nothing else depends on it. */
  readonly plantingArea_m2: number | null;
  /** For drawing: polygons of the planting area, each outer ring first, plane metres, x and y in turn; null while not worked out. */
  readonly plantingArea: readonly (readonly Float64Array[])[] | null;
  readonly causes: readonly Cause[];
  /** Edges of the outline along each edge feature, px, py, qx, qy in the plane, by the feature's key: what a row bearing is taken from. */
  readonly covered: ReadonlyMap<FeatureKey, readonly Float64Array[]>;
  readonly blocks: readonly BlockGround[];
}
