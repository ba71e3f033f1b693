import type { Finding } from "../finding.ts";
import { type LonLat, lonLat, planePoint } from "../plane/coordinate.ts";
import { overlappingPairs, placeOutside } from "../plane/validity.ts";
import type { FeatureKey } from "../project/project.ts";
import { holeInHole, holeNotInside } from "./findings.ts";
import { frameAt } from "./frame-at.ts";

/** Why a hole cannot be cut into an area of these rings (outline first, then holes), or null: it lies within it, beside its other holes. */
export function holeFault(
  feature: FeatureKey,
  hole: readonly LonLat[],
  rings: readonly (readonly LonLat[])[],
): Finding | null {
  const [outline, ...holes] = rings;
  const [first] = hole;
  if (outline === undefined || first === undefined) return null;
  const frame = frameAt(lonLat(Math.round(first[0] * 20) / 20, Math.round(first[1] * 20) / 20));
  const inPlane = (ring: readonly LonLat[]) => Float64Array.from(ring.flatMap((place) => [...frame.toPlane(place)]));
  const drawn = inPlane(hole);
  const outside = placeOutside(drawn, inPlane(outline));
  if (outside !== null) return holeNotInside(feature, frame.toLonLat(planePoint(outside[0], outside[1])));
  for (const other of holes) {
    const [pair] = overlappingPairs([[drawn], [inPlane(other)]], 1);
    if (pair !== undefined) return holeInHole(feature, frame.toLonLat(pair.at));
  }
  return null;
}
