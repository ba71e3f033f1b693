import type { Route } from "../mainline/route.ts";
import { elbowsFor } from "./elbows.ts";
import type { Bend, Branch } from "./trench.ts";

/** A branch tee sends its branch off square. */
const tee_deg = 90;
/** Less is a straight line as drawn. */
const straight_deg = 0.5;
const tiny_m = 1e-6;

type Direction = readonly [x: number, y: number];

/** A run that is laid, from its upstream end; where it says nothing it begins with a tee on another run that came to that point. */
interface Turning {
  readonly points: readonly number[];
  readonly begins?: "source" | "straight" | "tee";
}

/** A turn in plan: of which run, at which of its points. */
export interface Turn {
  readonly run: number;
  readonly at: number;
  readonly point: number;
  readonly angle_deg: number;
}

/**
 * Where the line turns in plan: along every branch, and where a branch leaves at another angle than its tee does. In the order of the
 * branches. The pipe on the leg up to a point takes up to `flexible_deg` by itself. Turns up and down follow the ground and need no fittings.
 */
export function bendsOf(
  { xy }: Pick<Route, "xy">,
  branches: readonly Branch[],
  flexible_deg: (point: number) => number,
): readonly Bend[] {
  return turnsOf({ xy }, branches).map(({ run, at, point, angle_deg }) => {
    // What leaves a tee turns in its own pipe.
    const leg = at === 0 ? (branches[run]?.points[1] ?? point) : point;
    return { point, xy: placeAt(xy, point), angle_deg, elbows: elbowsFor(angle_deg, flexible_deg(leg)) };
  });
}

/** The turns of runs, in their order; each run comes after the one it leaves. */
export function turnsOf({ xy }: Pick<Route, "xy">, runs: readonly Turning[]): readonly Turn[] {
  const arriving = new Map<number, Direction>();
  const turns: Turn[] = [];
  for (const [run, { points, begins }] of runs.entries()) {
    let before = arriving.get(points[0] ?? 0) ?? null;
    let isTee = before !== null && begins !== "straight";
    let from = points[0] ?? 0;
    for (const [i, to] of points.slice(1).entries()) {
      const way = direction(placeAt(xy, from), placeAt(xy, to));
      if (way !== null) {
        if (before !== null) {
          const turned_deg = between_deg(before, way);
          const angle_deg = isTee ? Math.abs(turned_deg - tee_deg) : turned_deg;
          if (angle_deg > straight_deg) turns.push({ run, at: i, point: from, angle_deg });
        }
        before = way;
        isTee = false;
      }
      from = to;
      if (before !== null) arriving.set(to, before);
    }
  }
  return turns;
}

function placeAt(xy: Float64Array, point: number): Direction {
  return [Number(xy[2 * point]), Number(xy[2 * point + 1])];
}

function direction(from: Direction, to: Direction): Direction | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length_m = Math.hypot(dx, dy);
  return length_m < tiny_m ? null : [dx / length_m, dy / length_m];
}

function between_deg(one: Direction, other: Direction): number {
  const cross = one[0] * other[1] - one[1] * other[0];
  const dot = one[0] * other[0] + one[1] * other[1];
  return (Math.abs(Math.atan2(cross, dot)) * 180) / Math.PI;
}
