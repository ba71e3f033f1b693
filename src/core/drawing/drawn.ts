import { featureKeys } from "../identity.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { entriesOf } from "../project/document.ts";
import { fileFeature } from "../project/file-feature.ts";
import { isJsonObject, member } from "../project/json-value.ts";
import { placeFault } from "../project/place-check.ts";
import type { FeatureKey, Json, JsonObject, Project, Role, Shape } from "../project/project.ts";
import { rememberedByObject } from "../project/remembered-by-object.ts";
import { roleOf } from "../project/role.ts";
import { type GeometryPath, geometryPaths } from "./geometry-paths.ts";
import { placeOf } from "./position.ts";

/** One outline, line or point of a drawn thing. */
export interface DrawnPath {
  /** Counts all paths of the feature in reading order. */
  readonly path: number;
  readonly closed: boolean;
  readonly isHole: boolean;
  /** Ring without the repeated last position; a point is a path of one corner. */
  readonly corners: readonly LonLat[];
}

/** A feature of the file as something to look at and to edit. */
export interface DrawnThing {
  readonly key: FeatureKey;
  /** An area without a role is the parcel when the file has no other. */
  readonly role: Role | null;
  readonly name: string | null;
  readonly properties: JsonObject;
  readonly paths: readonly DrawnPath[];
}

export interface CornerRef {
  readonly key: FeatureKey;
  readonly path: number;
  readonly corner: number;
}

/** Edge i runs from corner i to corner i + 1, or to corner 0 where the path is closed. */
export interface EdgeRef {
  readonly key: FeatureKey;
  readonly path: number;
  readonly edge: number;
}

/** A thing with what of it only the edits look at. */
export interface EditedThing extends DrawnThing {
  readonly feature: JsonObject;
  readonly geometry: readonly GeometryPath[];
}

const thingsRead = new WeakMap<object, readonly EditedThing[]>();

/** Every feature of the document that can be read and shown, edge features included and grids of heights left out, in the file's order. Never throws. */
export function drawnThings(project: Project): readonly DrawnThing[] {
  return editedThings(project);
}

/** The thing of a key, or null when there is none that can be read. */
export function drawnThing(project: Project, key: FeatureKey): DrawnThing | null {
  return editedThing(project, key);
}

/** The same as `drawnThings`, with the features they were read from. Remembered for as long as the list of features is the same. */
export function editedThings({ document }: Project): readonly EditedThing[] {
  const entries = entriesOf(document);
  const known = thingsRead.get(entries);
  if (known !== undefined) return known;
  const keys = featureKeys(entries);
  const read = entries.flatMap((entry, i) => {
    const key = keys[i] ?? `#${i}`;
    if (!isJsonObject(entry)) return [];
    const { shape, properties } = fileFeature(entry, key);
    return [{ entry, key, shape, reading: roleOf(properties) }];
  });
  const hasParcel = read.some(({ reading }) => reading.kind === "known" && reading.role === "parcel");
  const things = read.flatMap(({ entry, key, shape, reading }) => {
    if (shape === null || placeFault(shape) !== null || isGrid(reading, shape)) return [];
    const assumed = reading.kind === "none" && shape.areas.length > 0 && !hasParcel ? "parcel" : null;
    return [readOnce(entry, key, reading.kind === "known" ? reading.role : assumed)];
  });
  thingsRead.set(entries, things);
  return things;
}

/** A grid of heights covers all other things: the ground step tells of it, and nobody drags its corners. */
function isGrid(reading: ReturnType<typeof roleOf>, { areas }: Shape): boolean {
  return reading.kind === "known" && reading.role === "elevation" && areas.length > 0;
}

/** As `drawnThing`, for the edits. */
export function editedThing(project: Project, key: FeatureKey): EditedThing | null {
  return editedThings(project).find((thing) => thing.key === key) ?? null;
}

const readOnce = rememberedByObject((feature: JsonObject, key: FeatureKey, role: Role | null): EditedThing => {
  const stated = member(feature, "properties");
  const properties = isJsonObject(stated) ? stated : {};
  const geometry = geometryPaths(member(feature, "geometry") ?? null);
  const paths = geometry.map(({ path, kind, isHole, positions }): DrawnPath => {
    return { path, closed: kind === "ring", isHole, corners: positions.map(placeOf) };
  });
  return { key, role, name: nameOf(properties), properties, paths, feature, geometry };
});

function nameOf(properties: JsonObject): string | null {
  const name: Json | undefined = member(properties, "name");
  if (typeof name === "number") return String(name);
  return typeof name === "string" && name.trim() !== "" ? name : null;
}

const kinds: Readonly<Record<Role, string>> = {
  parcel: "Parcel",
  block: "Block",
  edge: "Edge",
  obstacle: "Obstacle",
  "no-plant": "No-plant line",
  "cross-alley": "Cross alley",
  row: "Standing row",
  "keep-row": "Kept row",
  mark: "Mark",
  source: "Water source",
  "main-line": "Main line",
  elevation: "Spot height",
};

/** What kind of thing it is, such as "No-plant area" or "Water source". */
export function thingKind({ role, paths }: Pick<DrawnThing, "role" | "paths">): string {
  if (role === null) return "Drawing";
  if (role === "elevation" && paths[0]?.closed === true) return "Grid of heights";
  if (role === "elevation" && (paths[0]?.corners.length ?? 0) > 1) return "Walked heights";
  return role === "no-plant" && paths[0]?.closed === true ? "No-plant area" : kinds[role];
}

/** What people call it: `Parcel “North field”`, "Oak (obstacle)", "Parcel 2", `Mark “pin”` for one known by its id only. */
export function thingLabel(thing: Pick<DrawnThing, "key" | "role" | "name" | "paths">): string {
  const kind = thingKind(thing);
  const { key, role, name } = thing;
  if (name !== null) {
    return role === "parcel" || role === "block" ? `${kind} “${name}”` : `${name} (${kind.toLowerCase()})`;
  }
  const number = /^(.+)-(\d+)$/.exec(key);
  if (number?.[1] === role) return `${kind} ${number[2]}`;
  const place = /^#(\d+)'*$/.exec(key);
  return place === null ? `${kind} “${key}”` : `${kind} (number ${Number(place[1]) + 1} of the file)`;
}
