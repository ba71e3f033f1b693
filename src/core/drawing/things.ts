import { featureKeys } from "../identity.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { entriesOf } from "../project/document.ts";
import type { FeatureKey, Json, JsonObject, Project, Role } from "../project/project.ts";
import { changed, type PathChanges } from "./change.ts";
import { outlinesOf } from "./covers.ts";
import { editedThing, thingKind } from "./drawn.ts";
import { notAPlace, notThere, tooFewCorners, wrongShape } from "./findings.ts";
import { holeFault } from "./hole-fault.ts";
import { isPlace } from "./position.ts";
import { withAllProperties, withProperty } from "./properties.ts";
import { type DrawnKind, drawnGeometry, shapesOf, shapeWords } from "./shape.ts";

/** A thing to draw. */
export interface NewThing {
  readonly role: Role;
  readonly shape: DrawnKind;
  readonly corners: readonly LonLat[];
  readonly name?: string;
  readonly properties?: JsonObject;
}

/**
 * The project with one more thing, at the end of the file, and its key: "parcel-1", "obstacle-3", the first number that is free. Corners
 * that repeat the one before are left out; areas are written counter-clockwise. Findings when it is refused: `drawing/wrong-shape`,
 * `drawing/too-few-corners`, `drawing/not-a-place`, `project/bad-setting`, `project/setting-out-of-range`.
 */
export function withThing(
  project: Project,
  { role, shape, corners, name, properties = {} }: NewThing,
): Outcome<{ readonly project: Project; readonly key: FeatureKey }> {
  if (!shapesOf[role].includes(shape)) {
    const wanted = shapesOf[role].map((each) => shapeWords[each]).join(" or ");
    return failure([wrongShape(null, one(thingKind({ role, paths: [] })), wanted)]);
  }
  if (!corners.every(isPlace)) return failure([notAPlace(null)]);
  const drawn = drawnGeometry(shape, corners);
  if (!drawn.ok) return failure([tooFewCorners(null, corners[0] ?? null, drawn.least, one(shape))]);
  const key = freeKey(project, role);
  const stated: JsonObject = name === undefined || name === "" ? { role } : { role, name };
  const all = withAllProperties(stated, role, properties, key);
  if (!all.ok) return all;
  const feature: JsonObject = { type: "Feature", id: key, properties: all.value, geometry: drawn.geometry };
  const next = changed(project, { added: [feature] });
  return success({ project: next, key }, next.findings);
}

/** "A spot height", "An area". */
function one(kind: string): string {
  return `${/^[aeiou]/i.test(kind) ? "An" : "A"} ${kind.toLowerCase()}`;
}

/** A key that no feature has: the role and the first number that is free. */
export function freeKey({ document }: Project, role: Role): FeatureKey {
  const used = new Set(featureKeys(entriesOf(document)));
  let number = 1;
  while (used.has(`${role}-${number}`)) number++;
  return `${role}-${number}`;
}

/**
 * The project without a thing, and without the edge features that run along it and along nothing else. Every other feature keeps its key.
 * Rows that ran along an edge that goes keep their bearing, as a number. Findings when it is refused: `drawing/not-there`.
 */
export function withoutThing(project: Project, key: FeatureKey): Outcome<Project> {
  if (!featureKeys(entriesOf(project.document)).includes(key)) return failure([notThere(key, "thing")]);
  const next = changed(project, { gone: new Set([key]), paths: edgesAlong(project, (thing) => thing === key) });
  return success(next, next.findings);
}

/**
 * The project with a hole in an area: in the polygon of it that the hole lies in. Findings when it is refused: `drawing/not-there`,
 * `drawing/wrong-shape`, `drawing/not-a-place`, `drawing/too-few-corners`, `drawing/hole-not-inside`, `drawing/hole-in-hole`.
 */
export function withHole(project: Project, key: FeatureKey, corners: readonly LonLat[]): Outcome<Project> {
  const thing = editedThing(project, key);
  if (thing === null) return failure([notThere(key, "area")]);
  const outlines = thing.geometry.filter(({ kind, isHole }) => kind === "ring" && !isHole);
  if (outlines.length === 0) return failure([wrongShape(key, "What has a hole", shapeWords.area)]);
  if (!corners.every(isPlace)) return failure([notAPlace(key)]);
  const drawn = drawnGeometry("hole", corners);
  if (!drawn.ok) return failure([tooFewCorners(null, corners[0] ?? null, drawn.least, "A hole")]);
  const tried = outlines.map(({ polygon }) => {
    const rings = thing.geometry.filter((each) => each.polygon === polygon);
    return {
      rings,
      fault: holeFault(
        key,
        corners,
        rings.map(({ path }) => thing.paths[path]?.corners ?? []),
      ),
    };
  });
  const inside =
    tried.find(({ fault }) => fault === null) ?? tried.find(({ fault }) => fault?.code === "drawing/hole-in-hole");
  const fault = inside === undefined ? tried[0]?.fault : inside.fault;
  const last = inside?.rings.at(-1);
  if (fault != null || last === undefined) return failure(fault == null ? [notThere(key, "area")] : [fault]);
  const next = changed(project, { paths: new Map([[key, new Map([[last.path, [last.positions, drawn.ring]]])]]) });
  return success(next, next.findings);
}

/**
 * The project without a hole, or without one of several outlines, lines or points of a thing; the thing itself goes with its last one.
 * Edge features along it go too. Findings when it is refused: `drawing/not-there`.
 */
export function withoutPath(project: Project, key: FeatureKey, path: number): Outcome<Project> {
  const thing = editedThing(project, key);
  const drawn = thing?.geometry[path];
  if (thing === null || drawn === undefined) return failure([notThere(key, "part")]);
  const goes = thing.geometry.filter(
    (each) => each.path === path || (drawn.kind === "ring" && !drawn.isHole && each.polygon === drawn.polygon),
  );
  if (goes.length === thing.geometry.length) return withoutThing(project, key);
  const numbers = new Set(goes.map((each) => each.path));
  const paths = new Map<FeatureKey, PathChanges>(edgesAlong(project, (other, at) => other === key && numbers.has(at)));
  paths.set(key, new Map(goes.map((each) => [each.path, []])));
  const next = changed(project, { paths });
  return success(next, next.findings);
}

/**
 * The project with a property of a thing set, or taken out when the value is null: name, setback, distance, wiresPass, width, outline,
 * height, tapedLength, or what another program knows. The value is as in the file and is checked as reading it would.
 * Findings when it is refused: `drawing/not-there`, `project/bad-setting`, `project/setting-out-of-range`.
 */
export function withThingProperty(
  project: Project,
  key: FeatureKey,
  name: string,
  value: Json | null,
): Outcome<Project> {
  const thing = editedThing(project, key);
  if (thing === null) return failure([notThere(key, "thing")]);
  const properties = withProperty(thing.properties, thing.role, name, value, key);
  if (!properties.ok) return properties;
  const next = changed(project, { properties: new Map([[key, properties.value]]) });
  return success(next, next.findings);
}

/** The lines of edge features that go with some outlines: those that run along one of them and along no other. */
function edgesAlong(
  project: Project,
  goes: (key: FeatureKey, path: number) => boolean,
): ReadonlyMap<FeatureKey, PathChanges> {
  const going = new Map<FeatureKey, Map<number, readonly (readonly Json[])[]>>();
  const outlines = outlinesOf(project).map((each) => ({
    covers: each.covers,
    isGoing: goes(each.thing.key, each.path),
  }));
  for (const { key, line } of outlines.flatMap(({ covers, isGoing }) => (isGoing ? covers : []))) {
    going.set(key, (going.get(key) ?? new Map<number, readonly (readonly Json[])[]>()).set(line, []));
  }
  for (const { key, line } of outlines.flatMap(({ covers, isGoing }) => (isGoing ? [] : covers)))
    going.get(key)?.delete(line);
  return going;
}
