import type { LonLat } from "../plane/coordinate.ts";
import { nearestOnSegment } from "../plane/segment.ts";
import type { FeatureKey, Json, Project } from "../project/project.ts";
import { type DrawnPath, type EditedThing, editedThings } from "./drawn.ts";
import { isSamePlace, withoutHeight } from "./position.ts";

/** How far a drawn edge may lie from the outline it belongs to, as for whoever reads the file. */
const onOutline_m = 0.1;
/** Metres a degree of latitude is long: near enough to tell 0.1 m. */
const degree_m = 111_320;

/** The sides of an outline that a line of an edge feature runs along. */
export interface Cover {
  readonly key: FeatureKey;
  /** The line's number among the paths of the edge feature. */
  readonly line: number;
  /** Corner of the outline where the first covered side begins. */
  readonly first: number;
  readonly sides: number;
  /** A position for every corner from first on, one more than sides: the line's own, or the outline's where the line has none. */
  readonly positions: readonly Json[];
  /** True when the line is drawn against the order of the outline's corners. */
  readonly isReversed: boolean;
}

/** An outline or a hole of a parcel: a path that has sides with setbacks. */
export interface OutlinePath {
  readonly thing: EditedThing;
  readonly path: number;
  readonly covers: readonly Cover[];
}

const outlinesRead = new WeakMap<object, readonly OutlinePath[]>();

/**
 * Every path of the project that has sides, with the lines of edge features along it in the file's order. A line that lies along one to the
 * last decimal is not looked for on others near by. Remembered for as long as what is drawn is the same.
 */
export function outlinesOf(project: Project): readonly OutlinePath[] {
  const things = editedThings(project);
  const known = outlinesRead.get(things);
  if (known !== undefined) return known;
  const paths = things.flatMap((thing) =>
    thing.paths
      .filter((path) => isOutline(thing, path))
      .map(({ path, corners }) => {
        return { thing, path, corners, positions: thing.geometry[path]?.positions ?? [] };
      }),
  );
  const covers = paths.map((): Cover[] => []);
  for (const edge of things) {
    if (edge.role !== "edge") continue;
    for (const { path, closed, corners } of edge.paths) {
      if (closed || corners.length < 2) continue;
      const exact = paths.map((each) => walk(corners, each.corners, isSamePlace));
      const found = exact.some((steps) => steps !== null)
        ? exact
        : paths.map((each) => walk(corners, each.corners, isNear));
      for (const [k, steps] of found.entries()) {
        const outline = paths[k];
        if (steps !== null && outline !== undefined) covers[k]?.push(coverOf(edge, path, steps, outline.positions));
      }
    }
  }
  const outlines = paths.map(({ thing, path }, k) => ({ thing, path, covers: covers[k] ?? [] }));
  outlinesRead.set(things, outlines);
  return outlines;
}

/** The sides that edge features cover on a path of a thing, in the file's order; none when it is not the outline of a parcel. */
export function coversOf(project: Project, thing: EditedThing, path: number): readonly Cover[] {
  return outlinesOf(project).find((each) => each.thing === thing && each.path === path)?.covers ?? [];
}

/** Is the path one that has sides with setbacks: the outline or a hole of a parcel? */
export function isOutline({ role }: EditedThing, { closed }: DrawnPath): boolean {
  return closed && role === "parcel";
}

/** Does the cover hold the side that begins at this corner of an outline with so many corners? */
export function coversSide({ first, sides }: Cover, side: number, corners: number): boolean {
  return (side - first + corners) % corners < sides;
}

/** Positions in the order the line is drawn in. */
export function inLineOrder({ isReversed }: Pick<Cover, "isReversed">, positions: readonly Json[]): readonly Json[] {
  return isReversed ? [...positions].reverse() : positions;
}

function coverOf(edge: EditedThing, path: number, steps: readonly Step[], outline: readonly Json[]): Cover {
  const own = edge.geometry[path]?.positions ?? [];
  const positions = steps.map(({ corner, at }) => (at === null ? withoutHeight(outline[corner]) : (own[at] ?? null)));
  const [begin, second] = steps;
  const isReversed = second?.corner !== ((begin?.corner ?? 0) + 1) % outline.length;
  return {
    key: edge.key,
    line: path,
    first: (isReversed ? steps.at(-1) : begin)?.corner ?? 0,
    sides: steps.length - 1,
    positions: isReversed ? [...positions].reverse() : positions,
    isReversed,
  };
}

/** A corner of the outline that a line comes to, and which of its positions stands there; null when it has none, the corner being on its way. */
interface Step {
  readonly corner: number;
  readonly at: number | null;
}

/** The corners a line comes to one after another, or null when it does not run along the outline from corner to corner. */
function walk(
  line: readonly LonLat[],
  ring: readonly LonLat[],
  isSame: (one: LonLat, other: LonLat) => boolean,
): readonly Step[] | null {
  const [begin] = line;
  if (begin === undefined) return null;
  for (const [corner, place] of ring.entries()) {
    if (!isSame(begin, place)) continue;
    const steps = walkFrom(corner, 1, line, ring, isSame) ?? walkFrom(corner, -1, line, ring, isSame);
    if (steps !== null) return steps;
  }
  return null;
}

function walkFrom(
  begin: number,
  direction: 1 | -1,
  line: readonly LonLat[],
  ring: readonly LonLat[],
  isSame: (one: LonLat, other: LonLat) => boolean,
): readonly Step[] | null {
  const steps: Step[] = [{ corner: begin, at: 0 }];
  let corner = begin;
  for (let j = 1; j < line.length; j++) {
    const [from, to] = [line[j - 1], line[j]];
    if (from === undefined || to === undefined) return null;
    for (;;) {
      corner = (corner + direction + ring.length) % ring.length;
      const place = ring[corner];
      if (place === undefined || steps.length > ring.length) return null;
      if (isSame(to, place)) break;
      if (!isBetween(place, from, to)) return null;
      steps.push({ corner, at: null });
    }
    steps.push({ corner, at: j });
  }
  return steps.length - 1 > ring.length ? null : steps;
}

function isNear(one: LonLat, other: LonLat): boolean {
  if (Math.abs(one[1] - other[1]) * degree_m > onOutline_m) return false;
  const [x, y] = offset(other, one);
  return Math.hypot(x, y) <= onOutline_m;
}

function isBetween(place: LonLat, from: LonLat, to: LonLat): boolean {
  return nearestOnSegment(...offset(place, from), 0, 0, ...offset(to, from)).distance_m <= onOutline_m;
}

/** Roughly the metres east and north of a place near by; longitudes may be a turn apart. */
function offset(place: LonLat, from: LonLat): readonly [number, number] {
  const turn = ((((place[0] - from[0] + 180) % 360) + 360) % 360) - 180;
  return [turn * Math.cos((from[1] * Math.PI) / 180) * degree_m, (place[1] - from[1]) * degree_m];
}
