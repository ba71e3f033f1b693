import { withMember, withoutMember } from "../project/json-value.ts";
import type { Json, JsonObject, Project } from "../project/project.ts";
import { bearingEdges } from "./bearing-edges.ts";
import { changed } from "./change.ts";
import { type Cover, inLineOrder } from "./covers.ts";
import type { EditedThing } from "./drawn.ts";
import { frameAt } from "./frame-at.ts";
import { placeOf, withoutHeight } from "./position.ts";
import { freeKey } from "./things.ts";

/** One side among those that a line of an edge feature runs along. */
export interface SideOfEdge {
  readonly edge: EditedThing;
  readonly cover: Cover;
  /** Which of the cover's sides, from 0. */
  readonly side: number;
}

/**
 * The project with one side of an edge feature made a feature of its own, with another setback or (null) with none; the feature goes on
 * along its other sides. Rows that run along the feature's longest side go on doing so: then that side keeps the feature's key, and the
 * others get a new one. A taped length is taken out, for it was that of all the sides together.
 */
export function withSideTakenOut(project: Project, taken: SideOfEdge, setback: Json | null): Project {
  const { edge, cover, side } = taken;
  const untaped = withoutMember(edge.properties, "tapedLength");
  const bare = withoutMember(untaped, "setback");
  const own = setback === null ? bare : withMember(bare, "setback", setback);
  const lists = { alone: cover.positions.slice(side, side + 2), rest: restOf(cover, side) };
  const alone = inLineOrder(cover, lists.alone);
  const rest = lists.rest.map((positions) => inLineOrder(cover, positions));
  if (bearingEdges(project).has(edge.key) && isLongest(edge, lists.alone)) {
    const others = edge.geometry.filter(({ path }) => path !== cover.line).map(({ positions }) => positions);
    const lines = [...rest, ...others];
    const paths = new Map<number, readonly (readonly Json[])[]>(edge.geometry.map(({ path }) => [path, []]));
    paths.set(cover.line, [alone]);
    return changed(project, {
      paths: new Map([[edge.key, paths]]),
      properties: new Map([[edge.key, own]]),
      added: lines.length === 0 ? [] : [feature(project, untaped, lines)],
    });
  }
  const saysNothing = setback === null && Object.keys(own).every((name) => name === "role");
  return changed(project, {
    paths: new Map([[edge.key, new Map([[cover.line, rest]])]]),
    properties: new Map([[edge.key, untaped]]),
    added: saysNothing ? [] : [feature(project, own, [alone.map(withoutHeight)])],
  });
}

/** What is left of the line on both sides of the one taken out; of a line all around it is one piece. */
function restOf({ positions, sides }: Cover, side: number): readonly (readonly Json[])[] {
  const [before, after] = [positions.slice(0, side + 1), positions.slice(side + 1)];
  const begin = placeOf(positions[0]);
  const end = placeOf(positions.at(-1));
  const isAround = sides > 2 && begin[0] === end[0] && begin[1] === end[1];
  const pieces = isAround ? [[...after, ...before.slice(1)]] : [before, after];
  return pieces.filter((piece) => piece.length > 1);
}

function isLongest(edge: EditedThing, side: readonly Json[]): boolean {
  const places = side.map(placeOf);
  const [first, second] = places;
  if (first === undefined || second === undefined) return false;
  const frame = frameAt(first);
  const length = (from: typeof first, to: typeof first): number => {
    const [a, b] = [frame.toPlane(from), frame.toPlane(to)];
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  };
  const own = length(first, second);
  return edge.paths.every(({ corners }) =>
    corners.slice(1).every((to, i) => length(corners[i] ?? to, to) <= own * (1 + 1e-9)),
  );
}

function feature(project: Project, properties: JsonObject, lines: readonly (readonly Json[])[]): JsonObject {
  const [line] = lines;
  const geometry =
    lines.length === 1
      ? { type: "LineString", coordinates: line ?? [] }
      : { type: "MultiLineString", coordinates: lines };
  return { type: "Feature", id: freeKey(project, "edge"), properties, geometry };
}
