import type { Finding } from "../finding.ts";
import { type LonLat, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { overlappingPairs, placeOutside, selfContacts, signedArea_m2 } from "../plane/validity.ts";
import {
  collinearPoints,
  holeOutside,
  holesOverlap,
  repeatedPoints,
  ringRewound,
  selfCrossing,
  zeroArea,
} from "./findings.ts";
import { mendRing } from "./mend-ring.ts";
import type { FeatureKey, Polygon } from "./project.ts";

/** Crossings of one feature that are named one by one. */
const mostCrossings = 10;

export interface MendedAreas {
  /** As `Ring` wants them; empty when any ring has an error. */
  readonly polygons: readonly Polygon[];
  readonly findings: readonly Finding[];
}

interface PlaneRing {
  readonly places: readonly LonLat[];
  readonly xy: Float64Array;
}

/**
 * The areas of a feature made fit to plan on: repeated and collinear corners left out, outer rings counter-clockwise, holes clockwise.
 * Rings come without their closing position, longitudes unwrapped. Findings: `project/zero-area`, `project/self-crossing`,
 * `project/hole-outside`, `project/holes-overlap` (errors), and notes of what was mended.
 */
export function mendAreas(
  areas: readonly (readonly (readonly LonLat[])[])[],
  feature: FeatureKey,
  frame: Frame,
  leastArea_m2: number,
): MendedAreas {
  const errors: Finding[] = [];
  let repeated = 0;
  let collinear = 0;
  let rewound: LonLat | null = null;
  const first = areas[0]?.[0]?.[0] ?? null;
  const where = (at: readonly [number, number]) => ({ feature, at: frame.toLonLat(planePoint(at[0], at[1])) });

  const polygons = areas.map((rings) => {
    const found = errors.length;
    const mended = rings.map((ring, r): PlaneRing => {
      const xy = inPlane(ring, frame);
      const { kept, ...left } = mendRing(xy);
      repeated += left.repeated;
      collinear += left.collinear;
      const outline = picked(ring, xy, kept);
      const area_m2 = signedArea_m2(outline.xy);
      const contacts = kept.length < 3 ? [] : selfContacts(outline.xy, mostCrossings + 1);
      const more = Math.max(0, contacts.length - mostCrossings);
      for (const [i, place] of contacts.slice(0, mostCrossings).entries()) {
        errors.push(selfCrossing(where(place), i === mostCrossings - 1 ? more : 0));
      }
      if (contacts.length === 0 && Math.abs(area_m2) < leastArea_m2) {
        errors.push(zeroArea({ feature, at: ring[0] ?? first }, Math.abs(area_m2)));
      }
      if (area_m2 < 0 === (r === 0)) {
        rewound ??= ring[0] ?? first;
        return reversed(outline);
      }
      return outline;
    });
    if (errors.length === found) errors.push(...holeFaults(mended, where));
    return mended.map(({ places }) => places);
  });

  const notes = [
    ...(repeated > 0 ? [repeatedPoints({ feature, at: first }, repeated)] : []),
    ...(collinear > 0 ? [collinearPoints({ feature, at: first }, collinear)] : []),
    ...(rewound === null ? [] : [ringRewound({ feature, at: rewound })]),
  ];
  return { polygons: errors.length > 0 ? [] : polygons, findings: [...errors, ...notes] };
}

function holeFaults(
  [outer, ...holes]: readonly PlaneRing[],
  where: (at: readonly [number, number]) => { feature: FeatureKey; at: LonLat },
): readonly Finding[] {
  if (outer === undefined || holes.length === 0) return [];
  const outside = holes.flatMap((hole) => {
    const at = placeOutside(hole.xy, outer.xy);
    return at === null ? [] : [holeOutside(where(at))];
  });
  const pairs = overlappingPairs(
    holes.map(({ xy }) => [xy]),
    mostCrossings,
  );
  return [...outside, ...pairs.map(({ at }) => holesOverlap(where(at)))];
}

function inPlane(ring: readonly LonLat[], frame: Frame): Float64Array {
  const xy = new Float64Array(2 * ring.length);
  ring.forEach((place, i) => {
    xy.set(frame.toPlane(place), 2 * i);
  });
  return xy;
}

function picked(ring: readonly LonLat[], xy: Float64Array, kept: readonly number[]): PlaneRing {
  if (2 * kept.length === xy.length) return { places: ring, xy };
  const places: LonLat[] = [];
  const corners = new Float64Array(2 * kept.length);
  for (const i of kept) {
    const place = ring[i];
    if (place === undefined) continue;
    corners.set(xy.subarray(2 * i, 2 * i + 2), 2 * places.length);
    places.push(place);
  }
  return { places, xy: corners };
}

function reversed({ places, xy }: PlaneRing): PlaneRing {
  const turned = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) turned.set(xy.subarray(i, i + 2), xy.length - 2 - i);
  return { places: [...places].reverse(), xy: turned };
}
