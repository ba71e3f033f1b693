import { type Finding, type Phrase, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey } from "../project/project.ts";

/** The thing, corner or edge that an edit names is not in the project: it was taken away meanwhile, or cannot be read. */
export function notThere(feature: FeatureKey, what: string): Finding {
  return refusal(
    "drawing/not-there",
    feature,
    null,
    say`There is no such ${what} in the drawing any more.`,
    say`It may have been deleted, or taken back with undo.`,
    say`Choose it again on the map.`,
  );
}

/** A place that is none on the globe. */
export function notAPlace(feature: FeatureKey | null): Finding {
  return refusal(
    "drawing/not-a-place",
    feature,
    null,
    say`That is no place on the globe.`,
    say`A latitude goes from -90 to 90 degrees, and a longitude from -180 to 180.`,
    say`Type the place again, latitude first.`,
  );
}

/** Fewer corners than a line or an outline must have. */
export function tooFewCorners(feature: FeatureKey | null, at: LonLat | null, least: number, shape: string): Finding {
  return refusal(
    "drawing/too-few-corners",
    feature,
    at,
    say`${shape} must have at least ${least === 1 ? "one corner" : `${least} corners`}.`,
    say`With fewer there is nothing left of it.`,
    feature === null ? say`Set one more corner.` : say`Move the corner instead, or delete the whole of it.`,
  );
}

/** A role that cannot be drawn as such a shape. */
export function wrongShape(feature: FeatureKey | null, what: string, wanted: string): Finding {
  return refusal(
    "drawing/wrong-shape",
    feature,
    null,
    say`${what} must be ${wanted}.`,
    say`Drawn in another way it would be kept in the file, but not used.`,
    say`Draw it as ${wanted}.`,
  );
}

/** A hole that is not within the area it is cut into. */
export function holeNotInside(feature: FeatureKey, at: LonLat): Finding {
  return refusal(
    "drawing/hole-not-inside",
    feature,
    at,
    say`The hole reaches outside the area here.`,
    say`A hole is ground taken out of the area it lies in.`,
    say`Draw it within the outline, or draw an obstacle instead.`,
  );
}

/** A hole that shares ground with another one. */
export function holeInHole(feature: FeatureKey, at: LonLat): Finding {
  return refusal(
    "drawing/hole-in-hole",
    feature,
    at,
    say`The hole overlaps another hole here.`,
    say`Ground that is taken out twice would count as ground again.`,
    say`Draw it beside the other hole, or make that one larger.`,
  );
}

/** An edge that is no side of a parcel. */
export function notAnOutline(feature: FeatureKey): Finding {
  return refusal(
    "drawing/not-an-outline",
    feature,
    null,
    say`Only the sides of a parcel have a setback, a taped length or rows along them.`,
    say`Planting keeps its distance from the outline of the parcel, and from drawn things as a whole.`,
    say`Choose a side of the parcel.`,
  );
}

function refusal(
  code: Finding["code"],
  feature: FeatureKey | null,
  at: LonLat | null,
  message: Phrase,
  reason: Phrase,
  remedy: Phrase,
): Finding {
  return { code, severity: "error", feature, at, message, reason, remedy };
}
