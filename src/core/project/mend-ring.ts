import { nearestOnSegment } from "../plane/segment.ts";
import { snap_m } from "../plane/tolerance.ts";

/** Corners nearer than this are one corner: no survey tells them apart. */
const repeated_m = 1e-3;

export interface MendedRing {
  /** Indices of the corners that stay, in their order. */
  readonly kept: readonly number[];
  readonly repeated: number;
  readonly collinear: number;
}

/**
 * The corners a ring needs: without those that repeat the one before (within 1 mm) and those on the straight edge between their
 * neighbours (within 1 µm in the plane). A corner where the ring turns back on itself stays: that is for the crossing check to say.
 * `xy` holds plane metres, x and y in turn, without the closing position.
 */
export function mendRing(xy: Float64Array): MendedRing {
  const apart = withoutRepeats(xy);
  // A corner at the far west is on no straight edge but a north-south one; beginning at its southern end makes it a true corner.
  const begin = apart.reduce((best, i, at) => (isBefore(xy, i, apart[best] ?? 0) ? at : best), 0);
  const turned = [...apart.slice(begin), ...apart.slice(0, begin)];
  const kept: number[] = [];
  for (const i of [...turned, ...turned.slice(0, 1)]) {
    while (kept.length > 1 && isOnEdge(xy, kept.at(-2) ?? 0, kept.at(-1) ?? 0, i)) kept.pop();
    kept.push(i);
  }
  kept.pop();
  return {
    kept: kept.sort((a, b) => a - b),
    repeated: xy.length / 2 - apart.length,
    collinear: apart.length - kept.length,
  };
}

function withoutRepeats(xy: Float64Array): readonly number[] {
  const apart: number[] = [];
  for (let i = 0; 2 * i < xy.length; i++) {
    const last = apart.at(-1);
    if (last === undefined || distance_m(xy, last, i) >= repeated_m) apart.push(i);
  }
  while (apart.length > 1 && distance_m(xy, apart[0] ?? 0, apart.at(-1) ?? 0) < repeated_m) apart.pop();
  return apart;
}

function isBefore(xy: Float64Array, i: number, j: number): boolean {
  const [a, b] = [xy[2 * i] ?? 0, xy[2 * j] ?? 0];
  return a < b || (a === b && (xy[2 * i + 1] ?? 0) < (xy[2 * j + 1] ?? 0));
}

/** Is corner b on the straight edge from a to c, between the two? */
function isOnEdge(xy: Float64Array, a: number, b: number, c: number): boolean {
  const [ax, ay] = [xy[2 * a] ?? 0, xy[2 * a + 1] ?? 0];
  const [bx, by] = [xy[2 * b] ?? 0, xy[2 * b + 1] ?? 0];
  const [cx, cy] = [xy[2 * c] ?? 0, xy[2 * c + 1] ?? 0];
  const isForward = (bx - ax) * (cx - bx) + (by - ay) * (cy - by) > 0;
  return isForward && nearestOnSegment(bx, by, ax, ay, cx, cy).distance_m <= snap_m;
}

function distance_m(xy: Float64Array, i: number, j: number): number {
  return Math.hypot((xy[2 * i] ?? 0) - (xy[2 * j] ?? 0), (xy[2 * i + 1] ?? 0) - (xy[2 * j + 1] ?? 0));
}
