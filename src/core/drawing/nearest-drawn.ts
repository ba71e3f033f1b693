import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { CornerRef, DrawnThing } from "./drawn.ts";
import { type Line, lineAlong, planePaths } from "./snap-geometry.ts";

export type XY = readonly [x_m: number, y_m: number];

/** A place on something drawn. */
export interface Near {
  readonly thing: DrawnThing;
  readonly at: XY;
  readonly distance_m: number;
}

export interface NearEdge extends Near {
  readonly line: Line;
  readonly ends: readonly [XY, XY];
}

export interface NearCorner extends Near {
  readonly path: number;
  readonly index: number;
}

interface Drawn {
  readonly frame: Frame;
  readonly things: readonly DrawnThing[];
  readonly reach_m: number;
  /** A corner that is no place to snap to, nor are its two sides. */
  readonly except?: CornerRef | null;
}

/** Edges this many times the reach away still count as near by for running parallel to them. */
const nearBy = 8;

/** What there is around a place: the nearest corner and the nearest edge within reach, and every edge near by. Looks at every edge once. */
export function nearestDrawn(
  { things, frame, reach_m, except }: Drawn,
  place: PlanePoint,
): { readonly corner: NearCorner | null; readonly edge: NearEdge | null; readonly around: readonly NearEdge[] } {
  let corner: NearCorner | null = null;
  let edge: NearEdge | null = null;
  const around: NearEdge[] = [];
  for (const thing of things) {
    for (const [path, xy] of planePaths(thing, frame).entries()) {
      const count = xy.length / 2;
      const isMoved = except?.key === thing.key && except.path === path;
      const edges = thing.paths[path]?.closed ? count : count - 1;
      for (let i = 0; i < count; i++) {
        const [px, py] = [Number(xy[2 * i]), Number(xy[2 * i + 1])];
        if (!(isMoved && i === except.corner)) {
          const distance_m = Math.hypot(px - place[0], py - place[1]);
          if (distance_m <= reach_m && distance_m < (corner?.distance_m ?? Number.POSITIVE_INFINITY)) {
            corner = { thing, path, index: i, at: [px, py], distance_m };
          }
        }
        const j = (i + 1) % count;
        if (i >= edges || (isMoved && (i === except.corner || j === except.corner))) continue;
        const [qx, qy] = [Number(xy[2 * j]), Number(xy[2 * j + 1])];
        const found = nearestOnSegment(place[0], place[1], px, py, qx, qy);
        if (found.distance_m > nearBy * reach_m) continue;
        const line = lineAlong(planePoint(px, py), planePoint(qx, qy));
        if (line === null) continue;
        const at: XY = [px + found.along * (qx - px), py + found.along * (qy - py)];
        const near: NearEdge = {
          thing,
          at,
          distance_m: found.distance_m,
          line,
          ends: [
            [px, py],
            [qx, qy],
          ],
        };
        around.push(near);
        // An edge feature lies on the outline it belongs to; of the two its name says more.
        const isNearer = found.distance_m < (edge?.distance_m ?? Number.POSITIVE_INFINITY) - 1e-6;
        const isNamed =
          found.distance_m <= (edge?.distance_m ?? 0) + 1e-6 && thing.role === "edge" && thing.name !== null;
        if (found.distance_m <= reach_m && (isNearer || isNamed)) edge = near;
      }
    }
  }
  return { corner, edge, around };
}
