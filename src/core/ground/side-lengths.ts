import type { Finding } from "../finding.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { EdgeSetback } from "../project/project.ts";
import { sideLengthDiffers } from "./findings.ts";
import { forEachEdge, type ParcelOutlines } from "./outlines.ts";

/** A tape read on uneven ground is a little off, and so are corners picked from a picture: below both of these nothing is said. */
const leastShare = 0.01;
const least_m = 0.5;

/**
 * A warning for each taped side that is drawn longer or shorter: by more than 1 % and more than half a metre (common sense, no source).
 * The taped length of an edge feature is that of all the sides it runs along. Findings: `ground/side-length-differs`.
 */
export function sideLengths(edges: readonly EdgeSetback[], parcels: ParcelOutlines, frame: Frame): readonly Finding[] {
  const taped = new Map(
    edges.flatMap(({ key, tapedLength_m }) => (tapedLength_m === null ? [] : [[key, tapedLength_m]])),
  );
  const keys = new Set(parcels.causes.map(({ feature }) => feature));
  return [...taped].flatMap(([key, taped_m]) => {
    const sides = parcels.covered.get(key) ?? [];
    const drawn_m = sides.reduce((sum, side) => sum + length_m(side), 0);
    const difference_m = Math.abs(taped_m - drawn_m);
    const middle = middleOfSides(sides, drawn_m);
    if (middle === null || difference_m <= least_m || difference_m <= leastShare * taped_m) return [];
    const numbered = sides.flatMap((side) => numberOf(side, parcels));
    const parcel = keys.size > 1 ? (numbered[0]?.parcel ?? null) : null;
    return [
      sideLengthDiffers(
        frame.toLonLat(middle),
        key,
        numbered.map(({ number }) => number),
        parcel,
        taped_m,
        drawn_m,
      ),
    ];
  });
}

function length_m([px = 0, py = 0, qx = 0, qy = 0]: Float64Array): number {
  return Math.hypot(qx - px, qy - py);
}

/** The place half-way along the sides, or null when there are none. */
function middleOfSides(sides: readonly Float64Array[], whole_m: number): PlanePoint | null {
  let left_m = whole_m / 2;
  for (const side of sides) {
    const [px = 0, py = 0, qx = 0, qy = 0] = side;
    const own_m = length_m(side);
    if (own_m > 0 && own_m >= left_m)
      return planePoint(px + ((qx - px) * left_m) / own_m, py + ((qy - py) * left_m) / own_m);
    left_m -= own_m;
  }
  return null;
}

/** The number of a side within its parcel, as everywhere else; none when it is not found. */
function numberOf(
  [px, py]: Float64Array,
  { outlines, causes }: ParcelOutlines,
): readonly { readonly number: number; readonly parcel: string }[] {
  const found: { readonly number: number; readonly parcel: string }[] = [];
  for (const { rings, cause } of outlines) {
    forEachEdge(rings, (e, x, y) => {
      const { edge, feature } = causes[Number(cause[e])] ?? {};
      if (x === px && y === py && edge != null && feature !== undefined && found.length === 0)
        found.push({ number: edge, parcel: feature });
    });
  }
  return found;
}
