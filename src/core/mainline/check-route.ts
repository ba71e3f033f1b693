import { areCrossing, segmentsApart_m } from "../plane/apart.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import { crossingAlong } from "../plane/segment.ts";
import { rowEnds } from "./heads.ts";
import type { Route } from "./route.ts";
import type { RouteJob } from "./route-job.ts";

/** Something that is not as it should be where a line runs as it was drawn, or leaves the parcels. */
export interface RouteFault {
  readonly kind: "crosses" | "slanted" | "near" | "rows" | "leaves";
  /** Index of the feature; -1 for outlines and rows. */
  readonly feature: number;
  readonly at: PlanePoint;
  /** How near, and how near it may come, for "near"; else 0. */
  readonly away_m: number;
  readonly least_m: number;
  /** Rows, by index, that are crossed. */
  readonly rows: readonly number[];
}

/** Nearer by less than this is rounding. */
const slack_m = 0.01;
/** A crossing this far from square is told. */
const mostSkew_deg = 20;

/** Faults of a route, each kind and feature once, the worst of it. Ways that were found keep from everything by themselves. */
export function routeFaults(route: Route, job: RouteJob): readonly RouteFault[] {
  const found = new Map<string, RouteFault>();
  const tell = (fault: RouteFault): void => {
    const key = `${fault.kind} ${fault.feature}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, fault);
    else {
      const worse = fault.away_m < known.away_m ? fault : known;
      found.set(key, { ...worse, rows: [...new Set([...known.rows, ...fault.rows])] });
    }
  };
  const ends = rowEnds(job.rows);
  route.upstream.forEach((from, to) => {
    if (from < 0) return;
    const [a, b] = [placeOf(route, from), placeOf(route, to)];
    if (route.isDrawn[to] === 1) {
      for (const fault of barrierFaults(a, b, job)) tell(fault);
      for (let row = 0; row < job.rows.line.length; row++) {
        const [start, end] = [ends[2 * row], ends[2 * row + 1]];
        if (start === undefined || end === undefined) continue;
        const along = crossingAlong(a, b, inward(start.post, end.post), inward(end.post, start.post));
        if (along === null) continue;
        tell({ kind: "rows", feature: -1, at: between(a, b, along), away_m: 0, least_m: 0, rows: [row] });
      }
    }
    for (const fault of leavingFaults(a, b, job)) tell(fault);
  });
  // What is crossed is near as well.
  return [...found.values()].filter(({ kind, feature }) => kind !== "near" || !found.has(`crosses ${feature}`));
}

/** Half a metre within its end posts a row is under way. */
function inward(post: PlanePoint, other: PlanePoint): PlanePoint {
  const length_m = Math.max(1, Math.hypot(other[0] - post[0], other[1] - post[1]));
  return between(post, other, 0.5 / length_m);
}

function barrierFaults(a: PlanePoint, b: PlanePoint, { barriers }: RouteJob): readonly RouteFault[] {
  return Array.from(barriers.feature).flatMap((feature, i): RouteFault[] => {
    const [px = 0, py = 0, qx = 0, qy = 0] = barriers.xy.subarray(4 * i, 4 * i + 4);
    const keep_m = Number(barriers.distance_m[i]);
    const away_m = segmentsApart_m(a[0], a[1], b[0], b[1], px, py, qx, qy);
    const fault = { feature, least_m: keep_m, away_m, rows: [] };
    if (!areCrossing(a[0], a[1], b[0], b[1], px, py, qx, qy)) {
      const isNear = away_m < keep_m - slack_m && !barriers.features[feature]?.isCrossable;
      return isNear ? [{ ...fault, kind: "near", at: between(a, b, 0.5) }] : [];
    }
    if (feature < 0) return [];
    const at = between(a, b, crossingAlong(a, b, planePoint(px, py), planePoint(qx, qy)) ?? 0.5);
    if (!barriers.features[feature]?.isCrossable) return [{ ...fault, kind: "crosses", at }];
    return skew_deg(a, b, [px, py, qx, qy]) > mostSkew_deg ? [{ ...fault, kind: "slanted", at }] : [];
  });
}

/** How far two directions are from square to one another. */
function skew_deg(a: PlanePoint, b: PlanePoint, [px, py, qx, qy]: readonly [number, number, number, number]): number {
  const [dx, dy, ex, ey] = [b[0] - a[0], b[1] - a[1], qx - px, qy - py];
  const along = Math.abs(dx * ex + dy * ey) / (Math.hypot(dx, dy) * Math.hypot(ex, ey));
  return (Math.asin(Math.min(1, along)) * 180) / Math.PI;
}

/** Asked of every leg of every route, on the page too: nothing is made for edges that are not crossed. */
function leavingFaults(a: PlanePoint, b: PlanePoint, { barriers }: RouteJob): readonly RouteFault[] {
  const { xy, outline } = barriers;
  const faults: RouteFault[] = [];
  for (let i = 0; i < outline.length; i++) {
    if (Number(outline[i]) < 0) continue;
    const [px, py] = [Number(xy[4 * i]), Number(xy[4 * i + 1])];
    const [qx, qy] = [Number(xy[4 * i + 2]), Number(xy[4 * i + 3])];
    if (!areCrossing(a[0], a[1], b[0], b[1], px, py, qx, qy)) continue;
    const at = between(a, b, crossingAlong(a, b, planePoint(px, py), planePoint(qx, qy)) ?? 0.5);
    faults.push({ kind: "leaves", feature: -1, at, away_m: 0, least_m: 0, rows: [] });
  }
  return faults;
}

function placeOf({ xy }: Route, point: number): PlanePoint {
  return planePoint(xy[2 * point] ?? 0, xy[2 * point + 1] ?? 0);
}

function between(a: PlanePoint, b: PlanePoint, share: number): PlanePoint {
  return planePoint(a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]));
}
