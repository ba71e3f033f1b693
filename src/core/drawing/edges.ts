import { failure, type Outcome, success } from "../outcome.ts";
import { withSetting } from "../project/edits.ts";
import { edgeProperties, parcelProperties } from "../project/feature-properties.ts";
import { member, withMember, withoutMember } from "../project/json-value.ts";
import type { FeatureKey, Json, JsonObject, Project } from "../project/project.ts";
import { readSection } from "../project/read-section.ts";
import { bearingEdges } from "./bearing-edges.ts";
import { changed } from "./change.ts";
import { coversOf, coversSide, isOutline } from "./covers.ts";
import { type EdgeRef, type EditedThing, editedThing } from "./drawn.ts";
import { notAnOutline, notThere } from "./findings.ts";
import { withoutHeight } from "./position.ts";
import { withProperty } from "./properties.ts";
import { type SideOfEdge, withSideTakenOut } from "./side-of-edge.ts";
import { freeKey } from "./things.ts";

/** What holds for one side of a parcel. */
export interface EdgeStatement {
  /** The setback stated for this side, as it was typed; null when the parcel's holds. */
  readonly own: Json | null;
  /** The distance that planting keeps from the side. */
  readonly inForce_m: number;
  /** Length by tape, as it was typed. */
  readonly taped: Json | null;
  readonly name: string | null;
  /** The edge feature that says so: that of the setback, else one that lies along this side; null when there is none. */
  readonly feature: FeatureKey | null;
}

interface Side {
  readonly thing: EditedThing;
  /** Positions of its two ends. */
  readonly ends: readonly [Json, Json];
  readonly covers: readonly SideCover[];
}

interface SideCover extends SideOfEdge {
  /** The edge feature lies along this side and along nothing else. */
  readonly isAlone: boolean;
}

/** The setback of a side and what else is stated of it. An edge that is no side of a parcel has none: nothing stated, and 0 in force. */
export function edgeSetback(project: Project, ref: EdgeRef): EdgeStatement {
  const found = sideOf(project, ref);
  if (!found.ok) return { own: null, inForce_m: 0, taped: null, name: null, feature: null };
  const { thing, covers } = found.value;
  const usual = readSection(parcelProperties, thing.properties, "", null).stated.setback ?? project.ground.setback_m;
  const stated = covers.findLast(({ edge }) => has(edge, "setback"));
  const own = stated === undefined ? null : (member(stated.edge.properties, "setback") ?? null);
  const read = readSection(edgeProperties, { setback: own }, "", null).stated.setback;
  const alone = covers.filter(({ isAlone }) => isAlone);
  const taped = alone.findLast(({ edge }) => has(edge, "tapedLength"));
  return {
    own,
    inForce_m: read ?? usual,
    taped: taped === undefined ? null : (member(taped.edge.properties, "tapedLength") ?? null),
    name: covers.findLast(({ edge }) => edge.name !== null)?.edge.name ?? null,
    feature: (stated ?? taped ?? alone.at(-1))?.edge.key ?? null,
  };
}

/**
 * The project with a setback for one side of a parcel, a quantity as typed; null takes it out, so that the parcel's holds again. Where an
 * edge feature runs along more sides, the others keep what they have. Findings when it is refused: `drawing/not-there`,
 * `drawing/not-an-outline`, `project/bad-setting`, `project/setting-out-of-range`.
 */
export function withEdgeSetback(project: Project, ref: EdgeRef, value: Json | null): Outcome<Project> {
  const found = sideOf(project, ref);
  if (!found.ok) return found;
  const checked = withProperty({}, "edge", "setback", value, ref.key);
  if (!checked.ok) return checked;
  const stated = found.value.covers.filter(({ edge }) => has(edge, "setback"));
  const last = stated.at(-1);
  if (value === null) {
    if (last === undefined) return success(project, project.findings);
    // What is taken out may have covered another statement for the same side.
    const next = last.isAlone ? withoutProperty(project, last.edge, "setback") : withSideTakenOut(project, last, null);
    return withEdgeSetback(next, ref, null);
  }
  const own = last ?? found.value.covers.findLast(({ isAlone }) => isAlone);
  if (own === undefined) return done(withEdge(project, found.value, { setback: value }));
  return done(own.isAlone ? withValue(project, own.edge, "setback", value) : withSideTakenOut(project, own, value));
}

/**
 * The project with the length of a side as it was taped, a quantity as typed; null takes it out. Findings when it is refused: as of
 * `withEdgeSetback`. The plan says where the tape and the drawing differ.
 */
export function withTapedSide(project: Project, ref: EdgeRef, value: Json | null): Outcome<Project> {
  const found = sideOf(project, ref);
  if (!found.ok) return found;
  const checked = withProperty({}, "edge", "tapedLength", value, ref.key);
  if (!checked.ok) return checked;
  const alone = found.value.covers.filter(({ isAlone }) => isAlone);
  const own = alone.findLast(({ edge }) => has(edge, "tapedLength")) ?? alone.at(-1);
  if (value === null) return done(own === undefined ? project : withoutProperty(project, own.edge, "tapedLength"));
  if (own === undefined) return done(withEdge(project, found.value, { tapedLength: value }));
  return done(withValue(project, own.edge, "tapedLength", value));
}

/**
 * The project with the rows of a block along a side of a parcel from now on: they turn with it. Findings when it is refused:
 * `drawing/not-there`, `drawing/not-an-outline`, and those of `withSetting`.
 */
export function withBearingAlong(project: Project, block: string, ref: EdgeRef): Outcome<Project> {
  const found = sideOf(project, ref);
  if (!found.ok) return found;
  const own = found.value.covers.findLast(({ isAlone }) => isAlone);
  const key = own?.edge.key ?? freeKey(project, "edge");
  const marked = own === undefined ? withEdge(project, found.value, {}) : project;
  const turned = withSetting(marked, `blocks.${block}.rows.bearing`, { edge: key });
  if (!turned.ok) return turned;
  // The edge the rows ran along before goes when that was all it was for.
  const left = [...bearingEdges(project)].filter(
    (edge) => !bearingEdges(turned.value).has(edge) && isIdle(turned.value, edge),
  );
  return done(left.length === 0 ? turned.value : changed(turned.value, { gone: new Set(left) }));
}

function sideOf(project: Project, ref: EdgeRef): Outcome<Side> {
  const thing = editedThing(project, ref.key);
  const path = thing?.paths[ref.path];
  if (thing === null || path === undefined) return failure([notThere(ref.key, "edge")]);
  if (!isOutline(thing, path)) return failure([notAnOutline(ref.key)]);
  const positions = thing.geometry[ref.path]?.positions ?? [];
  const [begin, end] = [positions[ref.edge], positions[(ref.edge + 1) % positions.length]];
  if (begin === undefined || end === undefined) return failure([notThere(ref.key, "edge")]);
  const covers = coversOf(project, thing, ref.path).flatMap((cover): SideCover[] => {
    const edge = editedThing(project, cover.key);
    if (edge === null || !coversSide(cover, ref.edge, positions.length)) return [];
    const side = (ref.edge - cover.first + positions.length) % positions.length;
    return [{ cover, edge, side, isAlone: cover.sides === 1 && edge.paths.length === 1 }];
  });
  return success({ thing, ends: [begin, end], covers });
}

function has({ properties }: EditedThing, name: string): boolean {
  return (member(properties, name) ?? null) !== null;
}

/** The project with a new edge feature along the side. */
function withEdge(project: Project, { ends }: Side, says: JsonObject): Project {
  const properties = { role: "edge", ...says };
  const geometry = { type: "LineString", coordinates: ends.map(withoutHeight) };
  return changed(project, { added: [{ type: "Feature", id: freeKey(project, "edge"), properties, geometry }] });
}

function withValue(project: Project, { key, properties }: EditedThing, name: string, value: Json): Project {
  return changed(project, { properties: new Map([[key, withMember(properties, name, value)]]) });
}

/** The property taken out, and the feature with it when that was all it said and no rows run along it. */
function withoutProperty(project: Project, { key, properties }: EditedThing, name: string): Project {
  const next = changed(project, { properties: new Map([[key, withoutMember(properties, name)]]) });
  return isIdle(next, key) ? changed(next, { gone: new Set([key]) }) : next;
}

/** Does an edge feature say nothing, with no rows along it? */
function isIdle(project: Project, key: FeatureKey): boolean {
  const says = Object.entries(editedThing(project, key)?.properties ?? {});
  return !bearingEdges(project).has(key) && says.every(([name, value]) => name === "role" || value === null);
}

function done(project: Project): Outcome<Project> {
  return success(project, project.findings);
}
