import type { Route } from "../../src/core/mainline/route.ts";
import type { RouteJob } from "../../src/core/mainline/route-job.ts";
import type { Point } from "./parcels.ts";
import {
  apart_m,
  besideRow_m,
  fromPiece_m,
  isCrossing,
  isInside,
  isWithin,
  type Keep,
  type Piece,
  pastPost,
} from "./route-world.ts";

/** The trench may be so much nearer to things, and tees so much beside the row. */
const tolerance_m = 1e-3;
/** A crossing may be so far off the square. */
const square_deg = 1;
/** The distance to posts, anchors and rows is wished: never less than this share of it, and what lacks the rest is told as a conflict. */
const hardShare = 0.5;
/** Along slanting row ends the lane lies so many times the distance past the anchor at most, and so much farther where that makes the trench straight. */
const slanted = 1 / 0.3;
const slide_m = 2;
/** A row is led on so far to a line that the person drew. */
const ledOn_m = 20;

/**
 * What is wrong with a route, by what a trench must keep from; looked at one straight leg at a time, with none of the product's own code.
 * A source that is too near to something may be left, but no nearer; from one outside the parcels the way leads in. Lines that the person
 * drew are theirs.
 */
export function routeFaults(job: RouteJob, route: Route): readonly string[] {
  return [...shapeFaults(job, route), ...teeFaults(job, route), ...legFaults(job, route)];
}

/** A tree from the source outward that is as long as its legs. */
function shapeFaults(job: RouteJob, route: Route): readonly string[] {
  const faults: string[] = [];
  const points = route.upstream.length;
  const lengths = [route.xy.length / 2, route.row.length, route.crossing.length, route.isDrawn.length];
  if (lengths.some((length) => length !== points)) faults.push(`${points} points, but lists of ${lengths.join(", ")}`);
  const source = job.sources[route.source]?.xy;
  if (source === undefined || Math.hypot(source[0] - (route.xy[0] ?? 0), source[1] - (route.xy[1] ?? 0)) > 1e-9) {
    faults.push("does not begin at its source");
  }
  route.upstream.forEach((from, i) => {
    if (i === 0 ? from !== -1 : !(from >= 0 && from < i)) faults.push(`point ${i} is fed from ${from}`);
  });
  const sum_m = legsOf(route).reduce((sum, { piece: [a, b] }) => sum + Math.hypot(a[0] - b[0], a[1] - b[1]), 0);
  if (Math.abs(sum_m - route.length_m) > 1e-6) faults.push(`${route.length_m} m long, its legs ${sum_m} m`);
  const crossings = route.crossing.filter((feature) => feature >= 0).length;
  if (crossings !== route.crossings) faults.push(`${route.crossings} crossings told, ${crossings} drawn`);
  return faults;
}

/**
 * Every row has one tee, on its own line at the end that is told, or none and is named. Beyond the anchor the lane swings out where the line
 * of row ends runs at a slant, and in where there is no room; else the tee is where the lane is, or on a drawn line.
 */
function teeFaults(job: RouteJob, route: Route): readonly string[] {
  const faults: string[] = [];
  const rows = job.rows.block.length;
  if (route.waterEnd.length !== rows) faults.push(`${route.waterEnd.length} water ends for ${rows} rows`);
  for (let row = 0; row < rows; row++) {
    const points = [...route.row.keys()].filter((i) => route.row[i] === row);
    const isUnreached = route.unreached.includes(row);
    if (points.length !== (isUnreached ? 0 : 1)) {
      faults.push(`row ${row} has ${points.length} tees${isUnreached ? " though it is unreached" : ""}`);
    }
    const pin = job.rows.pin[row];
    const end = route.waterEnd[row] === "end" ? 1 : 0;
    if (!isUnreached && pin !== 0 && pin !== end + 1) faults.push(`row ${row} is not met where it is pinned`);
    const [lane_m, reach_m] = [job.rows.lane_m[row] ?? 0, job.rows.reach_m[row] ?? 0];
    const isBeyond = lane_m >= reach_m + job.postDistance_m - tolerance_m;
    const least_m = isBeyond ? reach_m : lane_m;
    const most_m =
      job.drawn.length > 0 ? ledOn_m : isBeyond ? reach_m + slanted * job.postDistance_m + slide_m : lane_m;
    const along: Piece = [pastPost(job, row, end, Math.min(least_m, 0)), pastPost(job, row, end, most_m)];
    for (const i of points) {
      const off_m = fromPiece_m([route.xy[2 * i] ?? 0, route.xy[2 * i + 1] ?? 0], along);
      if (!(off_m <= tolerance_m)) faults.push(`the tee of row ${row} is ${off_m} m off`);
    }
  }
  return faults;
}

/** No leg comes too near to anything or crosses a row; crossings are square and where they may be. */
function legFaults(job: RouteJob, route: Route): readonly string[] {
  const faults: string[] = [];
  const walls = [...job.rows.block.keys()].map((row): Piece => {
    const past_m = Math.min(job.rows.reach_m[row] ?? 0, (job.rows.lane_m[row] ?? 0) - besideRow_m(job, row));
    return [pastPost(job, row, 0, past_m), pastPost(job, row, 1, past_m)];
  });
  const keeps = keepsOf(job);
  const isOutside = !isWithin({ keeps }, [route.xy[0] ?? 0, route.xy[1] ?? 0]);
  for (const leg of legsOf(route)) {
    if (leg.isDrawn) continue;
    const { piece, crossing, i } = leg;
    walls.forEach((wall, row) => {
      const apart = apart_m(piece, wall);
      const hard_m = hardShare * besideRow_m(job, row);
      const least_m = leg.upstream === 0 ? Math.min(hard_m, fromPiece_m(piece[0], wall)) : hard_m;
      if (apart === 0) faults.push(`leg ${i} crosses row ${row}`);
      else if (apart < least_m - tolerance_m) faults.push(`leg ${i} is ${apart.toFixed(3)} m from row ${row}`);
    });
    if (crossing >= 0 && job.barriers.features[crossing]?.isCrossable !== true) {
      faults.push(`leg ${i} crosses feature ${crossing}, which it may not`);
    }
    for (const keep of keeps) {
      if (leg.upstream === 0 && keep.feature === -1 && isOutside) continue;
      if (keep.feature === crossing && crossing >= 0) {
        if (isCrossing(piece, keep.piece) && !isSquare(piece, keep.piece)) {
          faults.push(`leg ${i} crosses feature ${crossing} askew`);
        }
        continue;
      }
      const least_m =
        leg.upstream === 0 ? Math.min(keep.distance_m, fromPiece_m(piece[0], keep.piece)) : keep.distance_m;
      const apart = apart_m(piece, keep.piece);
      if (apart < least_m - tolerance_m) {
        faults.push(`leg ${i} is ${apart.toFixed(3)} m from feature ${keep.feature}, not ${least_m.toFixed(3)} m`);
      }
    }
    job.barriers.features.forEach((feature, f) => {
      if (f === crossing || leg.upstream === 0) return;
      for (const { xy, ringStart } of feature.areas) {
        const ring = Array.from({ length: ringStart[1] ?? 0 }, (_, k): Point => [xy[2 * k] ?? 0, xy[2 * k + 1] ?? 0]);
        if (isInside(ring, middle(piece))) faults.push(`leg ${i} runs inside feature ${f}`);
      }
    });
  }
  return faults;
}

interface Leg {
  readonly i: number;
  readonly upstream: number;
  readonly piece: Piece;
  readonly crossing: number;
  readonly isDrawn: boolean;
}

export function legsOf(route: Route): readonly Leg[] {
  const at = (i: number): Point => [route.xy[2 * i] ?? Number.NaN, route.xy[2 * i + 1] ?? Number.NaN];
  return [...route.upstream].flatMap((upstream, i): readonly Leg[] =>
    upstream < 0
      ? []
      : [
          {
            i,
            upstream,
            piece: [at(upstream), at(i)],
            crossing: route.crossing[i] ?? -1,
            isDrawn: route.isDrawn[i] === 1,
          },
        ],
  );
}

/** What is kept from, features that may be crossed with it. */
function keepsOf({ barriers }: RouteJob): readonly Keep[] {
  return [...barriers.distance_m].map((distance_m, b) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = barriers.xy.subarray(4 * b, 4 * b + 4);
    return {
      piece: [
        [x1, y1],
        [x2, y2],
      ],
      distance_m,
      feature: barriers.feature[b] ?? -1,
    };
  });
}

function isSquare(leg: Piece, crossed: Piece): boolean {
  const turn = (direction(leg) - direction(crossed)) * (180 / Math.PI);
  return Math.abs((((turn % 180) + 180) % 180) - 90) <= square_deg;
}

function direction([[x1, y1], [x2, y2]]: Piece): number {
  return Math.atan2(y2 - y1, x2 - x1);
}

function middle([a, b]: Piece): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
