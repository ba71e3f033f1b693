import type { LonLat } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { signedArea_m2 } from "../plane/validity.ts";
import { type Course, courseBetween } from "./place.ts";

export interface PathMeasure {
  readonly sides: readonly Course[];
  readonly length_m: number;
  /** null for an open path, and for a closed one of fewer than three corners. */
  readonly area_m2: number | null;
}

/** Sides, whole length and area of a path, on the ellipsoid as the frame has it (see `Frame`). A closed path has a side back to its first corner. */
export function measurePath(frame: Frame, corners: readonly LonLat[], closed: boolean): PathMeasure {
  const isRing = closed && corners.length > 2;
  const ends = isRing ? [...corners.slice(1), ...corners.slice(0, 1)] : corners.slice(1);
  const sides = ends.flatMap((end, i) => {
    const begin = corners[i];
    return begin === undefined ? [] : [courseBetween(frame, begin, end)];
  });
  const length_m = sides.reduce((sum, side) => sum + side.length_m, 0);
  if (!isRing) return { sides, length_m, area_m2: null };
  const xy = Float64Array.from(corners.flatMap((corner) => [...frame.toPlane(corner)]));
  return { sides, length_m, area_m2: Math.abs(signedArea_m2(xy)) };
}
