import { type Finding, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey, HeightGrid, SpotHeight } from "../project/project.ts";

/** An `edge` feature that lies on no outline: its setback is not used. */
export function edgeOffOutline(at: LonLat | null, feature: FeatureKey): Finding {
  return {
    code: "ground/edge-off-outline",
    severity: "warning",
    at,
    feature,
    message: say`This edge does not lie along the outline of a parcel, so its setback is not used.`,
    reason: say`A setback that is meant for one side of the parcel is missing there, and rows may run closer than you want.`,
    remedy: say`Draw the edge again from corner to corner of the outline, or move its ends onto the outline.`,
  };
}

/** Setbacks and obstacles leave nothing to plant. */
export function nothingToPlant(at: LonLat, block: string): Finding {
  return {
    code: "ground/nothing-to-plant",
    severity: "warning",
    at,
    feature: null,
    message: say`Setbacks and obstacles leave no ground to plant in block ${block}.`,
    reason: say`No row can be laid out there.`,
    remedy: say`Use smaller setbacks, or check that the outline is the right one.`,
  };
}

/** A side that is drawn longer or shorter than its tape says; `sides` are numbers within the parcel. */
export function sideLengthDiffers(
  at: LonLat,
  feature: FeatureKey,
  sides: readonly number[],
  parcel: FeatureKey | null,
  taped_m: number,
  drawn_m: number,
): Finding {
  const numbers = sides.length > 1 ? `Sides ${sides.join(", ")}` : `Side ${sides.join("")}`;
  const whose = parcel === null ? "of the parcel" : `of parcel "${parcel}"`;
  const verb = sides.length > 1 ? "are" : "is";
  return {
    code: "ground/side-length-differs",
    severity: "warning",
    at,
    feature,
    message: say`${numbers} ${whose} ${verb} ${quantity("length", taped_m)} by tape and ${quantity("length", drawn_m)} as drawn.`,
    reason: say`Rows are laid out on the drawing; where it is off, so are their lengths and all that is bought for them.`,
    remedy: say`Tape the side again, held level, or move the corner that is wrong.`,
  };
}

/** Two blocks claim the same ground: the second one gets none of it. */
export function blocksShareGround(at: LonLat | null, block: string, other: string): Finding {
  return {
    code: "ground/blocks-share-ground",
    severity: "warning",
    at,
    feature: null,
    message: say`Blocks ${other} and ${block} both take all the ground that no other block has, so block ${block} is left empty.`,
    reason: say`The same ground would be planted twice.`,
    remedy: say`Draw an area with the role "block" for block ${block}.`,
  };
}

/** Two block areas overlap. */
export function blocksOverlap(at: LonLat, block: string, other: string): Finding {
  return {
    code: "ground/blocks-overlap",
    severity: "warning",
    at,
    feature: null,
    message: say`The areas of blocks ${other} and ${block} overlap here.`,
    reason: say`Rows of both blocks may be laid on the same ground and would be counted twice.`,
    remedy: say`Move the border so that the two areas only touch.`,
  };
}

/** A block's area lies outside all parcels. */
export function blockOutside(at: LonLat, block: string): Finding {
  return {
    code: "ground/block-outside",
    severity: "warning",
    at,
    feature: null,
    message: say`The area of block ${block} lies outside every parcel.`,
    reason: say`A block is planted only where it lies within a parcel.`,
    remedy: say`Move the area into the parcel, or draw the parcel it belongs to.`,
  };
}

/** Spot heights that span no ground. */
export function heightsTooFew(spots: readonly SpotHeight[]): Finding {
  return {
    code: "ground/heights-too-few",
    severity: "note",
    at: spots[0]?.at ?? null,
    feature: spots[0]?.key ?? null,
    message: say`${spots.length < 3 ? `${spots.length} spot ${spots.length === 1 ? "height is" : "heights are"} too few` : "The spot heights lie in one line"}, so the ground is taken as flat.`,
    reason: say`Only ground between three or more heights is known.`,
    remedy: say`Measure at least three places around the rows, better at every corner and where the slope changes.`,
  };
}

/** A grid of heights counts, and there are others besides. */
export function heightsNotUsed(used: HeightGrid, grids: number, spots: number): Finding {
  const others = [
    ...(grids > 0 ? [grids === 1 ? "1 other grid" : `${grids} other grids`] : []),
    ...(spots > 0 ? [spots === 1 ? "1 spot height" : `${spots} spot heights`] : []),
  ].join(" and ");
  return {
    code: "ground/heights-not-used",
    severity: "note",
    at: used.origin,
    feature: used.key,
    message: say`Heights come from the grid "${used.name ?? used.key}" with cells of ${quantity("length", used.cell_m)}; ${others} ${grids + spots === 1 ? "is" : "are"} not used.`,
    reason: say`Surveys count heights from different zeros: mixed, they would make steps in the ground.`,
    remedy: say`Take out the heights that you do not trust; of several grids the one with the smallest cells counts.`,
  };
}

/** Misses that a plane may have before it is warned of: rows would hang or dig in. Common sense, no source. */
const largestMiss_m = 0.5;

/** The ground is one plane, as wished for. */
export function onePlane(spots: readonly SpotHeight[], slope_ratio: number, miss_m: number): Finding {
  const missed =
    spots.length > 3 ? say`, which misses the one that fits worst by ${quantity("length", miss_m)}` : say``;
  return {
    code: "ground/one-plane",
    severity: miss_m > largestMiss_m ? "warning" : "note",
    at: spots[0]?.at ?? null,
    feature: spots[0]?.key ?? null,
    message: [
      ...say`The ground is taken as one plane through ${spots.length} spot heights, ${quantity("ratio", slope_ratio)} steep`,
      ...missed,
      ".",
    ],
    reason: say`The plane goes on outside the places that were measured; hollows and rises are not in it.`,
    remedy: say`Measure more places where the slope changes, and set ground.heights to "triangles".`,
  };
}
