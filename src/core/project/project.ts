import type { Feature, Geometry } from "geojson";
import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { UnitSystem } from "../units.ts";

/**
 * What the person knows and wants. Immutable.
 * `document` is the file as it was read, kept verbatim (unknown members, coordinates, quantities as typed); everything else is read
 * out of it once, mended and in SI. An edit changes the document and derives the parts it touched; untouched parts stay the same objects,
 * which is how the planner knows what to reuse.
 */
export interface Project {
  readonly document: ProjectDocument;
  /** What reading had to say: mended things, warnings, and errors that keep the project from being planned. */
  readonly findings: readonly Finding[];
  readonly name: string;
  readonly units: UnitSystem;
  /** Origin of the local frame, or null when the file has none yet (then the planner takes the middle of the parcels). */
  readonly frameOrigin: LonLat | null;
  readonly parcels: readonly Parcel[];
  readonly edges: readonly EdgeSetback[];
  readonly keepOuts: readonly KeepOut[];
  readonly crossAlleys: readonly CrossAlley[];
  readonly blockAreas: readonly BlockArea[];
  readonly givenRows: readonly GivenRow[];
  readonly keptPlaces: readonly KeptPlace[];
  readonly sources: readonly PlacedPoint[];
  readonly marks: readonly PlacedPoint[];
  readonly mainLines: readonly MainLine[];
  readonly spotHeights: readonly SpotHeight[];
  readonly ground: GroundSettings;
  /** Effective settings per block (defaults under project settings under the block's own); at least one. */
  readonly blocks: readonly Block[];
  readonly materials: MaterialSettings;
}

/**
 * A GeoJSON FeatureCollection with the settings in the foreign member `tautrow`; members nobody knows stay where they are. So do entries of
 * `features` that are none, and geometries that are broken: an error finding names them, so look into features only when there is none.
 */
export interface ProjectDocument {
  readonly type: "FeatureCollection";
  readonly features: readonly Feature<Geometry | null>[];
  readonly tautrow?: JsonObject;
  readonly [member: string]: unknown;
}

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [member: string]: Json;
}

/** Feature id as text, or "#3" for the fourth feature when it has none. Unique within a project. */
export type FeatureKey = string;

export const roles = [
  "parcel",
  "block",
  "edge",
  "obstacle",
  "no-plant",
  "cross-alley",
  "row",
  "keep-row",
  "mark",
  "source",
  "main-line",
  "elevation",
] as const;
export type Role = (typeof roles)[number];

/** Ring without the repeated last position; no repeated or exactly collinear points; outer counter-clockwise, holes clockwise; longitudes unwrapped. */
export type Ring = readonly LonLat[];
/** Outer ring first, then holes. */
export type Polygon = readonly Ring[];

export interface Parcel {
  readonly key: FeatureKey;
  readonly polygons: readonly Polygon[];
  /** Setback of the parcel's edges where no `edge` feature says otherwise; null takes the ground setting. */
  readonly setback_m: number | null;
  /** "walked" is a sketch: not for staking. */
  readonly outline: "surveyed" | "drawn" | "walked";
}

/** A setback for part of an outline: a line whose ends are vertices of the outline and that runs along it. */
export interface EdgeSetback {
  readonly key: FeatureKey;
  readonly line: readonly LonLat[];
  /** null when the feature only names an edge, or gives its taped length, or is there to take the row bearing from. */
  readonly setback_m: number | null;
  /** Length of the whole feature by tape, to hold the drawing against. */
  readonly tapedLength_m: number | null;
  readonly name: string | null;
}

/** Points, lines and areas of one feature, whatever its geometry type. */
export interface Shape {
  readonly points: readonly LonLat[];
  readonly lines: readonly (readonly LonLat[])[];
  readonly areas: readonly Polygon[];
}

/** An obstacle or a no-plant feature: planting keeps `distance_m` from it. */
export interface KeepOut {
  readonly key: FeatureKey;
  readonly role: "obstacle" | "no-plant";
  readonly name: string | null;
  readonly shape: Shape;
  readonly distance_m: number;
  /** Small things that wires and hose run past: vines in the gap are skipped, the row stays one. */
  readonly wiresPass: boolean;
  /** Longest gap that is carried through, when `wiresPass`; null takes one bay. */
  readonly largestGap_m: number | null;
}

/** A strip across long rows left open for machines: along lines `width_m` wide, or areas as drawn. */
export interface CrossAlley {
  readonly key: FeatureKey;
  readonly name: string | null;
  readonly shape: Shape;
  readonly width_m: number;
}

/** Where a block lies, when it is not the whole of the parcels. Several areas of one block are united. */
export interface BlockArea {
  readonly key: FeatureKey;
  readonly block: string;
  readonly polygons: readonly Polygon[];
}

/** A row that stands already: two end posts, or a taped length for a numbered row, or both. It replaces the computed row everywhere. */
export interface GivenRow {
  readonly key: FeatureKey;
  /** null: the block whose rows it is nearest to. */
  readonly block: string | null;
  /** Row id it stands for, such as "14" or "14a"; null: the computed row it lies on. */
  readonly row: string | null;
  readonly ends: readonly [LonLat, LonLat] | null;
  readonly tapedLength_m: number | null;
}

/** "Keep anyway": a piece too short to keep that runs by this place is kept. */
export interface KeptPlace {
  readonly key: FeatureKey;
  readonly at: LonLat;
}

export interface PlacedPoint {
  readonly key: FeatureKey;
  readonly name: string | null;
  readonly at: LonLat;
}

/** Where the person wants the main line to run. */
export interface MainLine {
  readonly key: FeatureKey;
  readonly name: string | null;
  readonly line: readonly LonLat[];
}

/** A measured height of the ground, above whatever all heights of the project are counted from. */
export interface SpotHeight {
  readonly key: FeatureKey;
  readonly name: string | null;
  readonly at: LonLat;
  readonly height_m: number;
}

export interface GroundSettings {
  /** Default distance that planting keeps from an edge. */
  readonly setback_m: number;
  readonly obstacleDistance_m: number;
  readonly noPlantDistance_m: number;
  readonly alleyWidth_m: number;
}

export interface Block {
  readonly id: string;
  readonly name: string;
  readonly rows: RowSettings;
  readonly trellis: TrellisSettings;
  readonly drip: DripSettings;
  readonly plantings: readonly Planting[];
}

export type BearingChoice =
  | { readonly kind: "given"; readonly bearing_deg: number }
  /** Along a drawn `edge` feature, or along the longest edge of the block's ground. */
  | { readonly kind: "edge"; readonly edge: FeatureKey | "longest" }
  /** Best score of the bearing sweep outside the locked ranges. */
  | { readonly kind: "best" };

export type RowOne =
  | { readonly kind: "centred" }
  /** Row 1 this far inside the outermost point of the outline on the first side. */
  | { readonly kind: "from-side"; readonly distance_m: number }
  | { readonly kind: "through"; readonly point: LonLat }
  /** The position that holds the most row length. */
  | { readonly kind: "most-row" };

export interface RowSettings {
  readonly bearing: BearingChoice;
  readonly rowSpacing_m: number;
  readonly vineSpacing_m: number;
  /** Length kept free at row ends, measured along the row from the outline. */
  readonly headland_m: number;
  readonly rowOne: RowOne;
  /**
   * The side where numbering begins, looking along the rows northward (eastward for rows nearer to east and west): left is west or north.
   * Standing at the start of row 1 and looking down it, the other rows are on your right.
   */
  readonly firstSide: "left" | "right";
  readonly minRow:
    | { readonly kind: "length"; readonly length_m: number }
    | { readonly kind: "vines"; readonly vines: number };
  /** Where rows end: at the last millimetre, at whole vine spacings, or at whole bays. */
  readonly rowEnd: "all" | "vines" | "bays";
  /** Which end gives up the leftover when rows end at whole vines or bays. */
  readonly trim: "both" | "start" | "end";
  /** End post to first vine. */
  readonly endGap_m: number;
  readonly vines: "centred" | "from-start" | "aligned";
  readonly bay_vines: number;
  readonly bays: "whole-vines" | "equal";
  /** What setbacks and headland are counted to. */
  readonly distancesTo: "end-post" | "anchor";
  /** End post to anchor, outward along the row. */
  readonly anchorOut_m: number;
  /** Bearings that are not wanted, clockwise from `from` to `to`, in [0, 180). */
  readonly lockedBearings: readonly { readonly from_deg: number; readonly to_deg: number }[];
  /** Metre-equivalent that a row costs for its two ends in the bearing score. */
  readonly rowCost_m: number;
}

export type WirePurpose = "fruiting" | "drip" | "foliage";

export interface Wire {
  readonly purpose: WirePurpose;
  readonly height_m: number;
  readonly diameter_mm: number;
  /** Wires at this height: 2 for a pair. */
  readonly count: number;
}

export interface TieOff {
  readonly kind: "gripper" | "loop";
  /** Wire past the end post for this kind of end. */
  readonly allowance_m: number;
}

export interface TrellisSettings {
  readonly wires: readonly Wire[];
  readonly tieOffStart: TieOff;
  readonly tieOffEnd: TieOff;
  readonly stakesPerVine: number;
}

export interface DripSettings {
  /** Flow of one emitter at its nominal pressure. */
  readonly emitterFlow_lph: number;
  readonly emittersPerVine: number;
  /** Hose past the last vine. */
  readonly overrun_m: number;
}

export interface Planting {
  /** First and last row number (inclusive). */
  readonly fromRow: number;
  readonly toRow: number;
  readonly variety: string;
  readonly rootstock: string | null;
  readonly spare_ratio: number;
}

export interface MaterialSettings {
  readonly wireCoil_m: number;
  readonly hoseCoil_m: number;
  readonly stakeClipBag: number;
  readonly hoseClipBag: number;
  readonly emitterBag: number;
  readonly vineSpare_ratio: number;
  readonly clipSpare_ratio: number;
  readonly emitterSpare_ratio: number;
  readonly linePostSpare_ratio: number;
  readonly endPostSpare: number;
}
