import { type Finding, listed, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey } from "../project/project.ts";

/** No row fits into a block that has ground. */
export function noRow(at: LonLat, block: string): Finding {
  return {
    code: "rows/none",
    severity: "warning",
    at,
    feature: null,
    message: say`No row fits into block ${block}.`,
    reason: say`Setbacks, headland, shortest row and where rows may end leave no piece of ground that is long enough.`,
    remedy: say`Try a shorter headland, a smaller setback, a smaller shortest row or another bearing.`,
  };
}

/** Plantable pieces under the shortest row. */
export function shortPieces(at: LonLat, block: string, pieces: number, length_m: number): Finding {
  return {
    code: "rows/short-pieces",
    severity: "note",
    at,
    feature: null,
    message: say`Block ${block}: ${pieces} plantable ${pieces === 1 ? "piece" : "pieces"} under the shortest row ${pieces === 1 ? "is" : "are"} left out, ${quantity("length", length_m)} in all.`,
    reason: say`A short row costs two end posts and anchors as a long one does.`,
    remedy: say`Lower the shortest row, or mark a place with the role "keep-row" to keep the piece that runs by it.`,
  };
}

/** The bearing is to be taken from an edge that is not there. */
export function bearingEdgeMissing(block: string, edge: FeatureKey): Finding {
  return {
    code: "rows/bearing-edge-missing",
    severity: "warning",
    at: null,
    feature: edge,
    message: say`Block ${block} takes its bearing from edge "${edge}", which lies on no outline; the longest edge is used.`,
    reason: say`The rows may run another way than you meant.`,
    remedy: say`Draw an edge with that id along the outline, or give the bearing in degrees.`,
  };
}

/** Every bearing is locked. */
export function allBearingsLocked(block: string): Finding {
  return {
    code: "rows/all-bearings-locked",
    severity: "warning",
    at: null,
    feature: null,
    message: say`Block ${block} is to take its best bearing, but no bearing that is not locked holds a row; the longest edge is used.`,
    reason: say`There is nothing to choose from.`,
    remedy: say`Unlock a range of bearings, or give the bearing in degrees.`,
  };
}

/** A taped length that is far from the mapped one. */
export function tapeDiffers(at: LonLat, feature: FeatureKey, taped_m: number, mapped_m: number): Finding {
  return {
    code: "rows/tape-differs",
    severity: "warning",
    at,
    feature,
    message: say`The taped length of this row is ${quantity("length", taped_m)}, on the map it is ${quantity("length", mapped_m)}. The taped length is used.`,
    reason: say`One of the two is wrong, or the row is not the one that was taped.`,
    remedy: say`Tape it once more, and check which posts the map shows.`,
  };
}

/** A taped length for a row that the plan does not have. */
export function givenRowUnknown(at: LonLat | null, feature: FeatureKey, row: string): Finding {
  return {
    code: "rows/given-row-unknown",
    severity: "warning",
    at,
    feature,
    message: say`A length is given for row ${row}, but there is no such row.`,
    reason: say`The taped length is not used anywhere.`,
    remedy: say`Check the row number; numbers change when bearing, spacing or the first side change. Two end posts on the map stay where they are.`,
  };
}

/** A given row stands where the plan has another number. */
export function givenRowElsewhere(at: LonLat | null, feature: FeatureKey, row: string, planned: string): Finding {
  return {
    code: "rows/given-row-elsewhere",
    severity: "warning",
    at,
    feature,
    message: say`The posts given for row ${row} stand where the plan has row ${planned}.`,
    reason: say`Paper and map would give this row two numbers.`,
    remedy: say`Change the number of the given row, or the side where numbering begins.`,
  };
}

/** Posts given outside the block's parcels. */
export function givenRowOutside(at: LonLat, feature: FeatureKey): Finding {
  return {
    code: "rows/given-row-outside",
    severity: "warning",
    at,
    feature,
    message: say`This row stands outside the parcel. It is counted all the same.`,
    reason: say`Either the outline or the place of the posts is wrong, and wire and vines are bought for it.`,
    remedy: say`Check the two posts, draw the outline around them, or take the row out.`,
  };
}

/** Two lengths for one row. */
export function givenTwice(at: LonLat, feature: FeatureKey, row: string): Finding {
  return {
    code: "rows/given-twice",
    severity: "warning",
    at,
    feature,
    message: say`Row ${row} is given more than once; this length is the one that is used.`,
    reason: say`Only one of them can be right.`,
    remedy: say`Take the others out of the file.`,
  };
}

/** Rows that lie partly outside the spot heights. */
export function heightsMissing(block: string, rows: readonly string[]): Finding {
  return {
    code: "rows/heights-missing",
    severity: "warning",
    at: null,
    feature: null,
    message: say`${block}: heights are not known along the whole of ${rows.length === 1 ? "row" : "rows"} ${listed(rows)}.`,
    reason: say`Their lengths along the ground are taken as level; on a slope of 15 % that is 1 % too short.`,
    remedy: say`Measure spot heights around all the rows, also beyond their ends.`,
  };
}

/** What is said of every slope: the program does not know the machine. */
const rating = say`The limit is a usual one or your own: check the machine's own slope rating and its roll-over protection, and keep off wet or loose ground.`;

/** Rows that climb more than the machine may. Limits: calculation handbook, section 10. */
export function steepAlong(block: string, rows: readonly string[], slope_ratio: number, limit_ratio: number): Finding {
  return {
    code: "rows/steep-along",
    severity: "warning",
    at: null,
    feature: null,
    message: say`${block}: ${rows.length === 1 ? "row" : "rows"} ${listed(rows)} ${rows.length === 1 ? "is" : "are"} up to ${quantity("ratio", slope_ratio)} steep along the row; the limit is ${quantity("ratio", limit_ratio)}.`,
    reason: say`A machine that climbs or brakes there may slide, tip or lose its load, and water runs down the row.`,
    remedy: [
      ...say`Turn the rows, leave the steep part unplanted, or raise the limit if your machine is made for it. `,
      ...rating,
    ],
  };
}

/** Rows that lean more to the side than the machine may. */
export function steepAcross(block: string, rows: readonly string[], slope_ratio: number, limit_ratio: number): Finding {
  return {
    code: "rows/steep-across",
    severity: "warning",
    at: null,
    feature: null,
    message: say`${block}: ${rows.length === 1 ? "row" : "rows"} ${listed(rows)} ${rows.length === 1 ? "leans" : "lean"} up to ${quantity("ratio", slope_ratio)} to the side; the limit is ${quantity("ratio", limit_ratio)}.`,
    reason: say`A machine that drives across a slope may slide or roll over.`,
    remedy: [...say`Turn the rows towards the fall of the ground, or level the alleys. `, ...rating],
  };
}
