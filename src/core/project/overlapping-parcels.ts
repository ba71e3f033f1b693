import type { Finding } from "../finding.ts";
import type { Frame } from "../plane/frame.ts";
import { overlappingPairs } from "../plane/validity.ts";
import { parcelsOverlap } from "./findings.ts";
import type { Parcel } from "./project.ts";

/** Overlaps that are looked for before the search is given up. */
const most = 100;

/** A warning for each pair of parcels that share ground. Findings: `project/parcels-overlap`. */
export function overlappingParcels(parcels: readonly Parcel[], frame: Frame): readonly Finding[] {
  const areas = parcels.flatMap(({ key, polygons }) => polygons.map((polygon) => ({ key, polygon })));
  if (areas.length < 2) return [];
  const rings = areas.map(({ polygon }) =>
    polygon.map((ring) => Float64Array.from(ring.flatMap((place) => [...frame.toPlane(place)]))),
  );
  return overlappingPairs(rings, most).flatMap(({ one, other, at }) => {
    const [first, second] = [areas[one], areas[other]];
    if (first === undefined || second === undefined) return [];
    return [parcelsOverlap({ feature: second.key, at: frame.toLonLat(at) }, first.key)];
  });
}
