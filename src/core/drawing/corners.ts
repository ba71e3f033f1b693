import { failure, type Outcome, success } from "../outcome.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { FeatureKey, Json, Project } from "../project/project.ts";
import { type Change, changed, type PathChanges } from "./change.ts";
import { coversOf, coversSide, inLineOrder, outlinesOf } from "./covers.ts";
import { type CornerRef, type EdgeRef, type EditedThing, editedThing, editedThings } from "./drawn.ts";
import { edgesWithoutCorner } from "./edges-without-corner.ts";
import { notAPlace, notThere, tooFewCorners } from "./findings.ts";
import { isPlace, isSamePlace, movedTo, placeOf, positionOf } from "./position.ts";

/*
 * Edits of one corner. Everything else keeps its numbers as they were written. Edge features that run along the outline follow.
 */

/**
 * The project with a corner at another place; the corners of edge features that stand on it go along. The outline may cross itself then:
 * the project has the finding that says so. Findings when it is refused: `drawing/not-there`, `drawing/not-a-place`.
 */
export function withCornerMoved(project: Project, ref: CornerRef, to: LonLat): Outcome<Project> {
  if (!isPlace(to)) return failure([notAPlace(ref.key)]);
  const found = cornerOf(project, ref);
  if (!found.ok) return found;
  const { thing, positions } = found.value;
  const paths = new Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>();
  put(paths, ref.key, ref.path, [positions.map((each, i) => (i === ref.corner ? movedTo(each, to) : each))]);
  const corners = positions.length;
  for (const cover of coversOf(project, thing, ref.path)) {
    const moved = cover.positions.map((each, k) =>
      (cover.first + k) % corners === ref.corner ? movedTo(each, to) : each,
    );
    if (moved.some((each, k) => each !== cover.positions[k])) {
      put(paths, cover.key, cover.line, [inLineOrder(cover, moved)]);
    }
  }
  const from = placeOf(positions[ref.corner]);
  if (thing.role === "parcel") moveLoose(project, from, to, paths);
  return done(project, { paths });
}

/**
 * The project with a corner more, on the edge or beside it; an edge feature along that edge gets the corner too.
 * Findings when it is refused: `drawing/not-there`, `drawing/not-a-place`.
 */
export function withCornerInserted(project: Project, { key, path, edge }: EdgeRef, at: LonLat): Outcome<Project> {
  if (!isPlace(at)) return failure([notAPlace(key)]);
  const thing = editedThing(project, key);
  const positions = thing?.geometry[path]?.positions;
  const drawn = thing?.paths[path];
  const isEdge = drawn !== undefined && edge >= 0 && edge < drawn.corners.length - (drawn.closed ? 0 : 1);
  if (thing === null || positions === undefined || !isEdge) return failure([notThere(key, "edge")]);
  const position = positionOf(at);
  const paths = new Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>();
  put(paths, key, path, [[...positions.slice(0, edge + 1), position, ...positions.slice(edge + 1)]]);
  const corners = positions.length;
  for (const cover of coversOf(project, thing, path)) {
    if (!coversSide(cover, edge, corners)) continue;
    const before = (edge - cover.first + corners) % corners;
    const more = [...cover.positions.slice(0, before + 1), position, ...cover.positions.slice(before + 1)];
    put(paths, cover.key, cover.line, [inLineOrder(cover, more)]);
  }
  return done(project, { paths });
}

/**
 * The project without a corner. Setbacks follow: a line that ended there runs on to the neighbour, so that the side that is left keeps
 * its setback; of two that differ the larger stays. Findings when it is refused: `drawing/not-there`, `drawing/too-few-corners`.
 */
export function withoutCorner(project: Project, ref: CornerRef): Outcome<Project> {
  const found = cornerOf(project, ref);
  if (!found.ok) return found;
  const { thing, positions } = found.value;
  const drawn = thing.paths[ref.path];
  const kind = thing.geometry[ref.path]?.kind ?? "point";
  const least = kind === "ring" ? 3 : kind === "line" ? 2 : 1;
  if (positions.length <= least) {
    const what = drawn?.isHole ? "A hole" : kind === "ring" ? "An outline" : kind === "line" ? "A line" : "A point";
    return failure([tooFewCorners(ref.key, drawn?.corners[ref.corner] ?? null, least, what)]);
  }
  const paths = new Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>();
  put(paths, ref.key, ref.path, [positions.filter((_, i) => i !== ref.corner)]);
  for (const { key, line, lists } of edgesWithoutCorner(project, thing, ref)) put(paths, key, line, lists);
  return done(project, { paths });
}

function cornerOf(
  project: Project,
  { key, path, corner }: CornerRef,
): Outcome<{ readonly thing: EditedThing; readonly positions: readonly Json[] }> {
  const thing = editedThing(project, key);
  const positions = thing?.geometry[path]?.positions;
  if (thing === null || positions?.[corner] === undefined) return failure([notThere(key, "corner")]);
  return success({ thing, positions });
}

/** Edge features that run along no outline from corner to corner: what of them stands on the corner goes along. */
function moveLoose(
  project: Project,
  from: LonLat,
  to: LonLat,
  paths: Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>,
): void {
  const following = new Set(
    outlinesOf(project).flatMap(({ covers }) => covers.map(({ key, line }) => `${line} ${key}`)),
  );
  for (const { role, key, geometry } of editedThings(project)) {
    if (role !== "edge") continue;
    for (const { path, positions } of geometry) {
      if (following.has(`${path} ${key}`)) continue;
      const moved = positions.map((each) => (isSamePlace(placeOf(each), from) ? movedTo(each, to) : each));
      if (moved.some((each, i) => each !== positions[i])) put(paths, key, path, [moved]);
    }
  }
}

function put(
  paths: Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>,
  key: FeatureKey,
  path: number,
  lists: readonly (readonly Json[])[],
): void {
  const own = paths.get(key) ?? new Map<number, readonly (readonly Json[])[]>();
  paths.set(key, own.set(path, lists));
}

function done(
  project: Project,
  change: Change & { readonly paths: ReadonlyMap<FeatureKey, PathChanges> },
): Outcome<Project> {
  const next = changed(project, change);
  return success(next, next.findings);
}
