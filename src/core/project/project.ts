import type { Feature, Geometry } from "geojson";
import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { UnitSystem } from "../units.ts";
import type { DripSettings, SeasonSettings, SetSettings, WaterSettings } from "./water-settings.ts";

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
  readonly heightGrids: readonly HeightGrid[];
  readonly ground: GroundSettings;
  readonly mainLine: MainLineSettings;
  readonly trench: TrenchSettings;
  readonly water: WaterSettings;
  readonly sets: SetSettings;
  readonly season: SeasonSettings;
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
  /** What the middle of a trench keeps from it. */
  readonly trenchDistance_m: number;
  /** May the main line cross it: never, square to it only, or as if it were not there (a power line overhead). */
  readonly crossing: Crossing;
}

export const crossings = ["never", "square", "free"] as const;
export type Crossing = (typeof crossings)[number];

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
  /** One of many along a line, such as a walked track: too many to write each on the map. */
  readonly isOnLine?: true;
}

/**
 * Heights on a square grid in a local plane of its own (see `createFrame`), whose origin is the middle of the grid: columns run east, rows
 * south, the first height is that of the north-west corner.
 */
export interface HeightGrid {
  readonly key: FeatureKey;
  readonly name: string | null;
  readonly origin: LonLat;
  readonly columns: number;
  readonly rows: number;
  readonly cell_m: number;
  /** Row by row; NaN where it is not known. */
  readonly height_m: Float64Array;
}

/** More heights than this make the project's file slow to keep: about 400 kB. */
export const mostGridHeights = 60_000;

/** What lies between spot heights: triangles from each to its neighbours, or one plane through them all. */
export const heightSurfaces = ["triangles", "plane"] as const;
export type HeightSurface = (typeof heightSurfaces)[number];

export interface GroundSettings {
  /** Default distance that planting keeps from an edge. */
  readonly setback_m: number;
  readonly obstacleDistance_m: number;
  readonly noPlantDistance_m: number;
  readonly alleyWidth_m: number;
  /** What the machine that drives the rows may do at most: slope along them, and across. */
  readonly steepestAlong_ratio: number;
  readonly steepestAcross_ratio: number;
  /** What lies between spot heights. */
  readonly heights: HeightSurface;
}

/** Where the main line crosses the line of a row: first vine to end post, end post to anchor, or past the anchor. */
export const lanes = ["inside", "between", "beyond"] as const;
export type Lane = (typeof lanes)[number];

/** The main line: one for the whole project. */
export interface MainLineSettings {
  /** The `source` feature it begins at; null: whichever costs least. */
  readonly source: FeatureKey | null;
  readonly lane: Lane;
  /** Least distance from the middle of the trench to posts and anchors, and to the rows it runs beside. */
  readonly postDistance_m: number;
  /** To obstacles, where the feature does not say. */
  readonly obstacleDistance_m: number;
  /** To no-plant lines and areas, where the feature does not say. */
  readonly noPlantDistance_m: number;
  readonly boundaryDistance_m: number;
  /** Ends of rows that are to meet the water, whatever it costs; the first that fits a row counts. */
  readonly pins: readonly WaterPin[];
  /** Of a metre of trench dug and filled, and of one crossing; null: not priced. The pipe's price is in the price list. */
  readonly trenchPrice_pm: number | null;
  readonly crossingPrice: number | null;
  /** What a crossing counts while it is not priced: as so much more trench. */
  readonly crossingAs_m: number;
}

export interface WaterPin {
  /** null: every block. */
  readonly block: string | null;
  /** First and last row number (inclusive). */
  readonly fromRow: number;
  readonly toRow: number;
  readonly end: "start" | "end";
}

/** How pipe is joined: solvent cement, gasketed bells, or barbed and clamped fittings on coiled pipe. */
export const pipeJoints = ["solvent", "gasket", "barbed"] as const;
export type PipeJoint = (typeof pipeJoints)[number];

export interface PipeSettings {
  /** Name of a size in the pipe tables (`pipeSizes`), or the person's own. */
  readonly size: string;
  readonly outside_mm: number;
  readonly inside_mm: number;
  /** Length that is sold. */
  readonly stick_m: number;
  readonly joint: PipeJoint;
}

export const trenchTools = ["hand", "trencher", "excavator"] as const;
export type TrenchTool = (typeof trenchTools)[number];

export const soilClasses = ["sand", "loam", "clay", "rock"] as const;
export type SoilClass = (typeof soilClasses)[number];

/** The trench: one for the whole project. */
export interface TrenchSettings {
  readonly pipe: PipeSettings;
  /** Ground over the top of the pipe. */
  readonly cover_m: number;
  /** The person's local figure; null: not known. The pipe lies below it. */
  readonly frostDepth_m: number | null;
  /** Least fall that the trench bottom is given towards the low end, on wish only; null: constant cover. */
  readonly grade_ratio: number | null;
  readonly bedding_m: number;
  readonly tool: TrenchTool;
  /** At the bottom; null: from the pipe and the tool. */
  readonly width_m: number | null;
  /** Horizontal over vertical of its sides; 0 stands upright. */
  readonly sideSlope_ratio: number;
  /** Room that the trencher takes to turn. */
  readonly turningRoom_m: number;
  readonly dug: "before-posts" | "after-posts";
  readonly soil: SoilClass;
  /** Loose over bank, less 1; null: that of the soil class. */
  readonly swell_ratio: number | null;
  /** Stations for the person who digs. */
  readonly stationStep_m: number;
  /** A low point is drained from this depth on. */
  readonly leastLow_m: number;
  /** Slowest and fastest an hour; null: that of the tool. */
  readonly dugPerHour_m: readonly [slow: number, fast: number] | null;
  readonly laidPerHour_m: readonly [slow: number, fast: number];
  readonly hoursADay_h: number;
  readonly people: number;
  /** Highest pressure of test and work, for thrust blocks. */
  readonly testPressure_kpa: number;
  /** What undisturbed soil bears, for thrust blocks. */
  readonly soilBearing_kpa: number;
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

/** Least breaking strength of the steel: classes of ASTM A854/A854M, or low carbon. Unknown is reckoned as low carbon. */
export const tensileClasses = ["unknown", "low-carbon", "grade-140", "grade-180", "grade-200"] as const;
export type TensileClass = (typeof tensileClasses)[number];

/** Zinc on the wire: it adds mass and no strength. */
export const coatings = ["unknown", "bare", "class-1", "class-3"] as const;
export type Coating = (typeof coatings)[number];

export interface Wire {
  readonly purpose: WirePurpose;
  /** Above the ground, as wished for: what posts with notches make of it is in the plan. */
  readonly height_m: number;
  readonly diameter_mm: number;
  /** Wires at this height: 2 for a pair. */
  readonly count: number;
  /** Lifted during the season: hangs on hooks, hand tight. */
  readonly isMovable: boolean;
  readonly tensile: TensileClass;
  readonly coating: Coating;
  /** Pull it is tightened to. */
  readonly tension_n: number;
  readonly tieOffStart: TieOff;
  readonly tieOffEnd: TieOff;
  /** In-line tensioners in each wire of this height. */
  readonly tensioners: number;
}

export const tieOffKinds = ["gripper", "loop", "crimp"] as const;
export type TieOffKind = (typeof tieOffKinds)[number];

export interface TieOff {
  readonly kind: TieOffKind;
  /** Wire past the end post for this kind of end; null: what the kind takes, for a wrapped loop by the girth of the post. */
  readonly allowance_m: number | null;
}

export const endAssemblyKinds = [
  "vertical",
  "leaning",
  "h-brace",
  "slant-brace",
  "inside-brace",
  "buried-anchor",
  "single",
] as const;
export type EndAssemblyKind = (typeof endAssemblyKinds)[number];

/** How the end of a row is held. How far out an anchor sits is `RowSettings.anchorOut_m`. */
export interface EndAssemblySettings {
  readonly kind: EndAssemblyKind;
  /** Between a leaning end post and the ground; 90 stands upright. Used by kind "leaning" only. */
  readonly postAngle_deg: number;
  /** Top of a leaning post away from the row, or over it. */
  readonly leanDirection: "out" | "in";
  /** Where the tie-back meets the post; null: at the highest wire that is not movable. */
  readonly tieHeight_m: number | null;
  /** Where a rail or strut meets the end post; null: as the tie. */
  readonly braceHeight_m: number | null;
  /** End post to brace post, or to the foot of a strut; null: twice the brace height. */
  readonly braceLength_m: number | null;
  /** Tie-back wire, and the diagonal wire of a brace. */
  readonly tieWire_mm: number;
  /** Strands of the tie-back. */
  readonly tieStrands: number;
  /** Hole that the end post is set in with concrete; null: no concrete. */
  readonly concreteHole_m: number | null;
  /** What one bag of dry mix gives. */
  readonly concreteBag_l: number;
}

/** How a post holds wire: staples in wood, notches at a fixed pitch, drilled holes, eye bolts. */
export const wireHolds = ["staple", "notch", "hole", "eye-bolt"] as const;
export type WireHold = (typeof wireHolds)[number];

export interface PostSettings {
  readonly holds: WireHold;
  readonly diameter_mm: number;
  /** In the ground; never less than the frost depth. */
  readonly embedment_m: number;
  /** Post above its highest wire. */
  readonly above_m: number;
  /** Length to buy; null: the shortest of `postLengths_m` that reaches. */
  readonly length_m: number | null;
  /** Height of the lowest notch and distance between notches. */
  readonly firstNotch_m: number;
  readonly notchPitch_m: number;
}

export interface StakeSettings {
  readonly embedment_m: number;
  /** Stake above the highest wire it is clipped to. */
  readonly above_m: number;
  readonly length_m: number | null;
}

export interface TrellisSettings {
  readonly wires: readonly Wire[];
  /** For wires that do not state their own. */
  readonly tieOffStart: TieOff;
  readonly tieOffEnd: TieOff;
  readonly endAssembly: EndAssemblySettings;
  readonly endPost: PostSettings;
  readonly linePost: PostSettings;
  readonly stake: StakeSettings;
  readonly stakesPerVine: number;
  /** Lengths that posts and stakes are sold in, shortest first. */
  readonly postLengths_m: readonly number[];
  readonly stakeLengths_m: readonly number[];
  /** The person's local figure; null: not known, nothing is deepened. */
  readonly frostDepth_m: number | null;
  /** Fruit at harvest, hung evenly on the fruiting wires; null: not given. */
  readonly cropPerVine_kg: number | null;
  /** When the wires are tightened, and the range they live through. */
  readonly tensionedAt_c: number;
  readonly coldest_c: number;
  readonly hottest_c: number;
  /** Pull that one anchor is known to hold; null: not known. */
  readonly anchorCapacity_n: number | null;
  /** Least height of a sagging wire or hose over the ground. */
  readonly leastClearance_m: number;
  /** Shares of the breaking load that are warned of, and that are an error. */
  readonly warnShare_ratio: number;
  readonly mostShare_ratio: number;
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
  /** Lengths that coils are sold in, unless the price list names them; at least one each. */
  readonly wireCoils_m: readonly number[];
  readonly hoseCoils_m: readonly number[];
  readonly cutting: CuttingSettings;
  readonly stakeClipBag: number;
  readonly hoseClipBag: number;
  readonly emitterBag: number;
  readonly stapleBag: number;
  readonly vineSpare_ratio: number;
  /** Of stake clips, hose clips, and what holds wire on posts. */
  readonly clipSpare_ratio: number;
  /** Of grippers, crimp sleeves, tensioners and links. */
  readonly gripperSpare_ratio: number;
  readonly emitterSpare_ratio: number;
  readonly linePostSpare_ratio: number;
  readonly stakeSpare_ratio: number;
  readonly endPostSpare: number;
  readonly onHand: readonly StockEntry[];
  readonly prices: readonly PriceEntry[];
  /** What prices are in, as the person writes it; null: not said. */
  readonly currency: string | null;
}

/** How coils of wire and hose are cut up. */
export interface CuttingSettings {
  /** Kept back on every coil: a share of it and a length. */
  readonly reserve_ratio: number;
  readonly reserve_m: number;
  /** Lost at every cut. */
  readonly slop_m: number;
  readonly wireJoins: "allowed" | "forbidden";
  readonly hoseJoins: "allowed" | "forbidden";
  /** Wire or hose that a join takes. */
  readonly joinLength_m: number;
  /** Price of one join; null: not priced. */
  readonly wireJoinPrice: number | null;
  readonly hoseJoinPrice: number | null;
  /** Heavier coils are not bought; null: any. */
  readonly heaviestCoil_kg: number | null;
}

/** What is there already of an article (see `Article.id`). */
export interface StockEntry {
  readonly article: string;
  /** Pieces, for what is counted. */
  readonly pieces: number;
  /** Coils and part coils, each with its own length, for wire and hose. */
  readonly coils_m: readonly number[];
}

/** One package size of an article in the person's price list. */
export interface PriceEntry {
  readonly article: string;
  /** Metres for wire and hose, pieces for all else. */
  readonly size: number;
  /** Of the whole package; null: not priced, which is not 0. */
  readonly price: number | null;
  readonly mass_kg: number | null;
  /** The person's own words: supplier, order number. */
  readonly note: string | null;
}
