import { type LonLat, type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import { type CornerRef, type DrawnThing, thingKind } from "./drawn.ts";
import { type NearCorner, type NearEdge, nearestDrawn, type XY } from "./nearest-drawn.ts";
import { footOn, lineAlong, lineThrough, meeting } from "./snap-geometry.ts";

export interface SnapInput {
  readonly frame: Frame;
  readonly things: readonly DrawnThing[];
  /** Where the pointer is. */
  readonly at: LonLat;
  /** How near is near. */
  readonly reach_m: number;
  /** The corner before the one that is placed, and the one before that. */
  readonly previous?: LonLat | null;
  readonly beforePrevious?: LonLat | null;
  /** The first corner of the ring, or the one after the corner that is moved: the next side goes to it. */
  readonly first?: LonLat | null;
  /** A corner that is being moved: it and its two sides are no places to snap to. */
  readonly except?: CornerRef | null;
}

export interface Snap {
  readonly at: LonLat;
  readonly kind: "corner" | "edge" | "right-angle" | "parallel" | "free";
  /** Lines to draw, so that one sees why. */
  readonly guides: readonly (readonly [LonLat, LonLat])[];
  /** "corner of North field", "right angle to the last side"; empty when nothing is near. */
  readonly words: string;
}

/**
 * Where a corner goes that is set near a place: on a corner within reach, else on an edge, else where a right angle or a parallel holds.
 * On an edge, a right angle to it or to the last side is taken when that is within reach too. Looks at every edge once.
 */
export function snapPlace(input: SnapInput): Snap {
  const { frame, at, reach_m } = input;
  const place = frame.toPlane(at);
  const previous = inPlane(frame, input.previous);
  const before = inPlane(frame, input.beforePrevious);
  const first = inPlane(frame, input.first);
  const { corner, edge, around } = nearestDrawn(input, place);
  const given = (xy: XY): LonLat => frame.toLonLat(planePoint(xy[0], xy[1]));
  const snap = (xy: XY, kind: Snap["kind"], words: string, guides: readonly (readonly [XY, XY])[]): Snap => {
    return { at: given(xy), kind, words, guides: guides.map(([from, to]) => [given(from), given(to)]) };
  };

  if (corner !== null)
    return { ...snap(corner.at, "corner", `corner of ${called(corner.thing)}`, []), at: exact(corner, input) };
  const lastSide = previous === null || before === null ? null : lineAlong(previous, before);
  const square = previous === null || lastSide === null ? null : lineThrough(previous, lastSide, true);
  if (edge !== null) {
    const along = called(edge.thing, true);
    const foot = previous === null ? null : footOn(edge.line, previous);
    if (
      previous !== null &&
      foot !== null &&
      isWithin(foot, place, reach_m) &&
      isOn(edge, foot) &&
      apart(foot, previous) > reach_m
    ) {
      return snap(foot, "right-angle", `right angle to ${along}`, [[previous, foot]]);
    }
    const crossing = square === null ? null : meeting(square, edge.line);
    if (previous !== null && crossing !== null && isWithin(crossing, place, reach_m) && isOn(edge, crossing)) {
      return snap(crossing, "edge", `along ${along}, at a right angle to the last side`, [[previous, crossing]]);
    }
    return snap(edge.at, "edge", `along ${along}`, [edge.ends]);
  }
  if (previous === null) return free(at);

  if (square !== null && first !== null) {
    const both = footOn(square, first);
    if (isWithin(both, place, reach_m) && apart(both, first) > reach_m && apart(both, previous) > reach_m) {
      return snap(both, "right-angle", "right angle at both ends", [
        [previous, both],
        [both, first],
      ]);
    }
  }
  if (square !== null) {
    const foot = footOn(square, place);
    if (isWithin(foot, place, reach_m) && apart(foot, previous) > reach_m) {
      return snap(foot, "right-angle", "right angle to the last side", [[previous, foot]]);
    }
  }
  return beside(around, previous, place, reach_m, snap) ?? free(at);
}

function free(at: LonLat): Snap {
  return { at, kind: "free", guides: [], words: "" };
}

/** The best of the lines through the last corner that run along an edge near by, or square to it. */
function beside(
  around: readonly NearEdge[],
  previous: PlanePoint,
  place: PlanePoint,
  reach_m: number,
  snap: (xy: XY, kind: Snap["kind"], words: string, guides: readonly (readonly [XY, XY])[]) => Snap,
): Snap | null {
  let best: {
    readonly foot: XY;
    readonly edge: NearEdge;
    readonly isSquare: boolean;
    readonly distance_m: number;
  } | null = null;
  for (const edge of around) {
    for (const isSquare of [false, true]) {
      const foot = footOn(lineThrough(previous, edge.line, isSquare), place);
      const distance_m = apart(foot, place);
      if (distance_m > reach_m || apart(foot, previous) <= reach_m) continue;
      if (best === null || distance_m < best.distance_m - 1e-6) best = { foot, edge, isSquare, distance_m };
    }
  }
  if (best === null) return null;
  const { foot, edge, isSquare } = best;
  const words = `${isSquare ? "right angle to" : "parallel to"} ${called(edge.thing, true)}`;
  return snap(foot, isSquare ? "right-angle" : "parallel", words, [[previous, foot], edge.ends]);
}

/** The corner as it is drawn, to the last decimal. */
function exact({ thing, path, index }: NearCorner, { at }: SnapInput): LonLat {
  return thing.paths[path]?.corners[index] ?? at;
}

/** "North field", "the east fence", "the parcel"; with `isEdge` "the edge of North field" where the thing is an area. */
function called(thing: DrawnThing, isEdge = false): string {
  const { name, role, paths } = thing;
  const own = name ?? `the ${thingKind(thing).toLowerCase()}`;
  if (role === "edge") return name === null ? "the edge" : `the ${name}`;
  return isEdge && paths.some(({ closed }) => closed) ? `the edge of ${own}` : own;
}

function inPlane(frame: Frame, at: LonLat | null | undefined): PlanePoint | null {
  return at == null ? null : frame.toPlane(at);
}

function apart(one: XY, other: XY): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}

function isWithin(one: XY, other: XY, reach_m: number): boolean {
  return apart(one, other) <= reach_m;
}

function isOn({ ends: [[px, py], [qx, qy]] }: NearEdge, [x, y]: XY): boolean {
  return nearestOnSegment(x, y, px, py, qx, qy).distance_m <= 1e-6;
}
