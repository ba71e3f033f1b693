import type { Route } from "../mainline/route.ts";
import { elbowsFor } from "./elbows.ts";
import type { Bend, Branch } from "./trench.ts";

/** A branch tee sends its branch off square. */
const tee_deg = 90;
/** Less is a straight line as drawn. */
const straight_deg = 0.5;
const tiny_m = 1e-6;

type Direction = readonly [x: number, y: number];

/**
 * Where the line turns in plan: along every branch, and where a branch leaves at another angle than its tee does. In the order of the
 * branches. The pipe takes up to `flexible_deg` by itself. Turns up and down follow the ground and need no fittings.
 */
export function bendsOf({ xy }: Pick<Route, "xy">, branches: readonly Branch[], flexible_deg: number): readonly Bend[] {
  const arriving = new Map<number, Direction>();
  const bends: Bend[] = [];
  const place = (point: number) => [Number(xy[2 * point]), Number(xy[2 * point + 1])] as const;
  for (const { points } of branches) {
    let before = arriving.get(points[0] ?? 0) ?? null;
    let isTee = before !== null;
    let from = points[0] ?? 0;
    for (const to of points.slice(1)) {
      const way = direction(place(from), place(to));
      if (way !== null) {
        if (before !== null) {
          const turned_deg = between_deg(before, way);
          const angle_deg = isTee ? Math.abs(turned_deg - tee_deg) : turned_deg;
          if (angle_deg > straight_deg)
            bends.push({ point: from, xy: place(from), angle_deg, elbows: elbowsFor(angle_deg, flexible_deg) });
        }
        before = way;
        isTee = false;
      }
      from = to;
      if (before !== null) arriving.set(to, before);
    }
  }
  return bends;
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
