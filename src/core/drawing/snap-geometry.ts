import type { PlanePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { DrawnThing } from "./drawn.ts";

/** Plane coordinates of a thing's paths, x and y in turn. */
export type PlanePaths = readonly Float64Array[];

const inPlane = new WeakMap<DrawnThing, { readonly frame: Frame; readonly paths: PlanePaths }>();

/** The paths of a thing in the plane, remembered as long as the thing and the frame are the same objects. */
export function planePaths(thing: DrawnThing, frame: Frame): PlanePaths {
  const known = inPlane.get(thing);
  if (known?.frame === frame) return known.paths;
  const paths = thing.paths.map(({ corners }) => {
    const xy = new Float64Array(2 * corners.length);
    for (const [i, corner] of corners.entries()) xy.set(frame.toPlane(corner), 2 * i);
    return xy;
  });
  inPlane.set(thing, { frame, paths });
  return paths;
}

/** A straight line in the plane: a point of it and its direction, of length 1. */
export interface Line {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** The line through p along p to q, or null when the two are one place. */
export function lineAlong(p: PlanePoint, q: PlanePoint): Line | null {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return length < 1e-6 ? null : { x: p[0], y: p[1], dx: (q[0] - p[0]) / length, dy: (q[1] - p[1]) / length };
}

/** The line through another point, in the same direction or square to it. */
export function lineThrough(p: PlanePoint, { dx, dy }: Pick<Line, "dx" | "dy">, isSquare: boolean): Line {
  return isSquare ? { x: p[0], y: p[1], dx: -dy, dy: dx } : { x: p[0], y: p[1], dx, dy };
}

/** Closest place of a line to a point. */
export function footOn({ x, y, dx, dy }: Line, at: readonly [number, number]): readonly [number, number] {
  const along = (at[0] - x) * dx + (at[1] - y) * dy;
  return [x + along * dx, y + along * dy];
}

/** Where two lines meet; null when they are nearly parallel. */
export function meeting(one: Line, other: Line): readonly [number, number] | null {
  const cross = one.dx * other.dy - one.dy * other.dx;
  if (Math.abs(cross) < 0.05) return null;
  const along = ((other.x - one.x) * other.dy - (other.y - one.y) * other.dx) / cross;
  return [one.x + along * one.dx, one.y + along * one.dy];
}
