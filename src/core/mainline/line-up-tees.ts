import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Clearance } from "./clearance.ts";
import type { RowEnd } from "./heads.ts";
import { tautBetween } from "./taut.ts";

/** A point of the route in the making. */
export interface RoutePoint {
  readonly at: PlanePoint;
  /** Index of the point it is fed from; -1 for the source. */
  readonly upstream: number;
  /** Row end whose tee it is, or null. */
  readonly tee: RowEnd | null;
  readonly crossing: number;
  readonly isDrawn: boolean;
}

/** A tee may lie so much farther out on the line of its row than it must, so that the trench runs straight. Common practice, no source. */
const slide_m = 2;
/** Rows this far from parallel are not lined up with one another. */
const parallel = Math.cos(Math.PI / 180);
/** Stations of a line of tees go up by at least this. */
const least_m = 0.2;

/**
 * The points with the tees of neighbouring rows moved out along their rows until the trench between them is as straight and short as it
 * gets: nobody digs from row end to row end in zigzags. Where the straight way is not clear the tees stay.
 */
export function linedUpTees(points: readonly RoutePoint[], clearance: Clearance): readonly RoutePoint[] {
  const onward: number[][] = points.map(() => []);
  points.forEach(({ upstream }, i) => {
    onward[upstream]?.push(i);
  });
  const moved = [...points];
  for (const run of runsOfTees(points, onward)) {
    const lined = linedUp(run, moved, clearance);
    if (lined === null) continue;
    lined.forEach((at, i) => {
      const index = run[i] ?? -1;
      const point = moved[index];
      if (point !== undefined) moved[index] = { ...point, at };
    });
  }
  return moved;
}

/** Tees of parallel rows one after another; the first and the last of a run stay where they are. */
function runsOfTees(
  points: readonly RoutePoint[],
  onward: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const runs: number[][] = [];
  /** May the way from a tee to the one before it be straightened? */
  const goesOn = (i: number): boolean => {
    const [point, before] = [points[i], points[points[i]?.upstream ?? -1]];
    return isParallel(before, point) && point?.isDrawn === false && point.crossing < 0;
  };
  points.forEach(({ upstream }, i) => {
    if (!goesOn(i) || (goesOn(upstream) && onward[upstream]?.length === 1)) return;
    const run = [upstream, i];
    for (let at = i; onward[at]?.length === 1; ) {
      const [next = -1] = onward[at] ?? [];
      if (!goesOn(next)) break;
      run.push(next);
      at = next;
    }
    runs.push(run);
  });
  return runs;
}

function isParallel(one: RoutePoint | undefined, other: RoutePoint | undefined): boolean {
  if (one?.tee == null || other?.tee == null) return false;
  const [a, b] = [one.tee.outward, other.tee.outward];
  return a[0] * b[0] + a[1] * b[1] > parallel;
}

/** The places of a run when it is pulled taut; null where that can not be. */
function linedUp(
  run: readonly number[],
  points: readonly RoutePoint[],
  clearance: Clearance,
): readonly PlanePoint[] | null {
  const places = run.map((i) => points[i]).filter((point) => point !== undefined);
  const first = places.find(({ tee }) => tee !== null)?.tee;
  if (first === undefined || first === null || places.length < 3) return null;
  const [ox, oy] = first.outward;
  const [tx, ty] = directionOf(places, first.outward);
  const at = places.map((point) => point.at[0] * tx + point.at[1] * ty);
  if (at.some((station, i) => i > 0 && station - Number(at[i - 1]) < least_m)) return null;
  const low = places.map((point) => point.at[0] * ox + point.at[1] * oy);
  const high = low.map((height, i) => height + slideAt(i, places, clearance));
  const taut = tautBetween(at, low, high);
  const lined = places.map(({ at: place, tee }, i) => {
    const by_m = Number(taut[i]) - Number(low[i]);
    return tee === null ? place : planePoint(place[0] + by_m * tee.outward[0], place[1] + by_m * tee.outward[1]);
  });
  const isClear = lined.every((place, i) => {
    const before = lined[i - 1];
    return before === undefined || clearance.isClear(before[0], before[1], place[0], place[1]);
  });
  return isClear ? lined : null;
}

/** Along the run, square to the rows. */
function directionOf(places: readonly RoutePoint[], [ox, oy]: PlanePoint): readonly [number, number] {
  const [from, to] = [places[0], places.at(-1)];
  const along = (Number(to?.at[0]) - Number(from?.at[0])) * -oy + (Number(to?.at[1]) - Number(from?.at[1])) * ox;
  return along < 0 ? [oy, -ox] : [-oy, ox];
}

function slideAt(i: number, places: readonly RoutePoint[], { isUntouched }: Clearance): number {
  const point = places[i];
  if (i === 0 || i === places.length - 1 || point?.tee == null) return 0;
  for (const by_m of [slide_m, slide_m / 2, slide_m / 4]) {
    if (isUntouched(point.at[0] + by_m * point.tee.outward[0], point.at[1] + by_m * point.tee.outward[1])) return by_m;
  }
  return 0;
}
