import { areClearlyApart, segmentsApart_m } from "../plane/apart.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import { crossingAlong } from "../plane/segment.ts";
import type { Clearance } from "./clearance.ts";
import type { RouteJob } from "./route-job.ts";

/** A way straight and square across something that may be crossed. */
export interface Gate {
  readonly from: PlanePoint;
  readonly to: PlanePoint;
  /** Index of the feature. */
  readonly feature: number;
}

/** Apart along what is crossed; each row end and source has a crossing abreast of it besides. */
const step_m = 10;
/** Places farther off have none of their own, nor has one that is so near to another's. */
const near_m = 40;
const least_m = 1;
/** Just outside the distance that the trench keeps. */
const outside_m = 1e-3;
/** The sides of a road or stream are taken as parallel up to this angle: the crossing is square to both, so far. */
const mostSkew_rad = Math.PI / 9;
/** Wider than this nothing is crossed. */
const widest_m = 60;

/** Where crossable features can be crossed: along each of their edges every so far, and abreast of the `places`. */
export function gatesOf(job: RouteJob, clearance: Clearance, places: readonly PlanePoint[]): readonly Gate[] {
  const { barriers } = job;
  return Array.from(barriers.feature).flatMap((feature, i): Gate[] => {
    const of = barriers.features[feature];
    if (of === undefined || !of.isCrossable) return [];
    const [px = 0, py = 0, qx = 0, qy = 0] = barriers.xy.subarray(4 * i, 4 * i + 4);
    const length_m = Math.hypot(qx - px, qy - py);
    if (length_m === 0) return [];
    const [ux, uy] = [(qx - px) / length_m, (qy - py) / length_m];
    return stationsOn(px, py, ux, uy, length_m, places).flatMap((station_m): Gate[] => {
      const foot = planePoint(px + station_m * ux, py + station_m * uy);
      const across = [1, -1].flatMap((side): Gate[] => {
        const square = planePoint(-uy * side, ux * side);
        const wide_m = of.areas.length === 0 ? 0 : widthFrom_m(job, feature, foot, square);
        if (wide_m === null) return [];
        const keep_m = Number(barriers.distance_m[i]) + outside_m;
        const from = moved(foot, square, -keep_m);
        const to = moved(foot, square, wide_m + keep_m);
        return clearance.isFree(from[0], from[1]) &&
          clearance.isFree(to[0], to[1]) &&
          isPastOthers(job, feature, from, to)
          ? [{ from, to, feature }]
          : [];
      });
      // A line is crossed alike from both sides.
      return of.areas.length === 0 ? across.slice(0, 1) : across;
    });
  });
}

function stationsOn(
  px: number,
  py: number,
  ux: number,
  uy: number,
  length_m: number,
  places: readonly PlanePoint[],
): readonly number[] {
  const steps = Math.max(1, Math.round(length_m / step_m));
  const even = Array.from({ length: steps }, (_, i) => ((i + 0.5) * length_m) / steps);
  const abreast = places
    .filter(([x, y]) => Math.abs((x - px) * uy - (y - py) * ux) < near_m)
    .map(([x, y]) => (x - px) * ux + (y - py) * uy)
    .filter((along_m) => along_m > 0 && along_m < length_m)
    .sort((a, b) => a - b);
  const apart = abreast.filter((along_m, i) => along_m - Number(abreast[i - 1] ?? -Infinity) > least_m);
  return [...even, ...apart];
}

function moved([x, y]: PlanePoint, [dx, dy]: PlanePoint, by_m: number): PlanePoint {
  return planePoint(x + by_m * dx, y + by_m * dy);
}

/** How wide an area is from a place on its edge, square to the edge; null where it is not there, too wide or not parallel. */
function widthFrom_m({ barriers }: RouteJob, feature: number, foot: PlanePoint, square: PlanePoint): number | null {
  const begin = moved(foot, square, outside_m);
  const far = moved(foot, square, widest_m);
  let least: number | null = null;
  let skew_rad = 0;
  barriers.feature.forEach((of, i) => {
    if (of !== feature) return;
    const [px = 0, py = 0, qx = 0, qy = 0] = barriers.xy.subarray(4 * i, 4 * i + 4);
    const along = crossingAlong(begin, far, planePoint(px, py), planePoint(qx, qy));
    if (along === null || (least !== null && along >= least)) return;
    least = along;
    const length_m = Math.hypot(qx - px, qy - py);
    skew_rad = Math.asin(Math.min(1, Math.abs((square[0] * (qx - px) + square[1] * (qy - py)) / length_m)));
  });
  return least === null || skew_rad > mostSkew_rad ? null : outside_m + least * (widest_m - outside_m);
}

/** Does the crossing keep from everything else? */
function isPastOthers({ barriers }: RouteJob, feature: number, from: PlanePoint, to: PlanePoint): boolean {
  return Array.from(barriers.feature).every((of, i) => {
    if (of === feature) return true;
    const [px = 0, py = 0, qx = 0, qy = 0] = barriers.xy.subarray(4 * i, 4 * i + 4);
    const keep_m = Number(barriers.distance_m[i]);
    if (areClearlyApart(from[0], from[1], to[0], to[1], px, py, qx, qy, keep_m)) return true;
    const away_m = segmentsApart_m(from[0], from[1], to[0], to[1], px, py, qx, qy);
    return away_m > 0 && away_m >= keep_m;
  });
}
