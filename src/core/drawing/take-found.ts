import { featureKeys } from "../identity.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { entriesOf } from "../project/document.ts";
import { isJsonObject, member } from "../project/json-value.ts";
import type { FeatureKey, Json, JsonObject, Project, Role } from "../project/project.ts";
import { changed } from "./change.ts";
import { type FoundFeatures, foundFeatures } from "./found-features.ts";
import { foundAlreadyThere, foundHeightsTogether, foundTooMany } from "./found-findings.ts";
import { type Remark, told } from "./found-remarks.ts";
import { foundShape, positionsIn, strayPosition } from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";
import { originOf } from "./frame-at.ts";
import { placeOf } from "./position.ts";

/** A found thing and the role chosen for it. */
export interface TakenThing {
  readonly thing: FoundThing;
  readonly role: Role;
}

/** A project with found things in it. */
export interface WithFound {
  readonly project: Project;
  /** Keys of the new features, for each of the things in turn; none for one that was not taken. */
  readonly keysOf: readonly (readonly FeatureKey[])[];
  /** How many of the things were taken. */
  readonly taken: number;
}

/** Things that are taken in at once: each becomes a thing to select and to keep. */
export const mostTaken = 5000;
/** Spot heights of one layer that stay things of their own: more become one thing of many points. */
const mostSpotHeights = 100;

/**
 * The project with found things at the end of the file, each in the role chosen for it, with ids that are free. What cannot be taken is
 * left out and told; when nothing can be, there is no project. Findings: `drawing/found-too-many`, `drawing/found-already-there`,
 * `drawing/found-heights-together`, and those of `foundFeatures`.
 */
export function withFound(project: Project, taken: readonly TakenThing[]): Outcome<WithFound> {
  const many = spotHeightLayers(taken);
  const together = new Set(many.flatMap(({ members }) => members));
  const single = taken.filter((each) => !together.has(each));
  if (single.length > mostTaken) return failure([foundTooMany(single.length, mostTaken)]);
  const middle = originOf(project) ?? middleOf(taken);
  const known = new Set(entriesOf(project.document).map(printOf));
  const used = new Set(featureKeys(entriesOf(project.document)));
  const added: JsonObject[] = [];
  const numbers = new Map<Role, number>();
  const keysOf = new Map<TakenThing, readonly FeatureKey[]>();
  const remarks: Remark[] = [];
  const add = (things: readonly TakenThing[], { thing, role }: TakenThing, found: FoundFeatures): void => {
    const { features, remarks: said } = found;
    const fresh = features.filter((feature) => !known.has(printOf(feature)));
    if (features.length > 0 && fresh.length === 0) {
      remarks.push({ cause: "there", thing, finding: foundAlreadyThere });
      return;
    }
    remarks.push(...said);
    const keys = fresh.map((feature) => {
      let number = (numbers.get(role) ?? 0) + 1;
      while (used.has(`${role}-${number}`)) number++;
      numbers.set(role, number);
      const id = `${role}-${number}`;
      known.add(printOf(feature));
      added.push({ type: "Feature", id, ...feature });
      return id;
    });
    if (keys.length > 0) for (const each of things) keysOf.set(each, keys);
  };
  for (const each of single) add([each], each, foundFeatures(each.thing, each.role, project, middle));
  for (const { thing, members } of many) {
    const spots = foundFeatures(thing, "elevation", project, middle);
    const finding: Remark["finding"] = (those) => foundHeightsTogether(those, members.length);
    const said: Remark = { cause: `together ${thing.layer}`, thing, finding };
    add(members, { thing, role: "elevation" }, { ...spots, remarks: [...spots.remarks, said] });
  }
  const findings = told(remarks);
  if (added.length === 0) return failure(findings);
  const inOrder = taken.map((each) => keysOf.get(each) ?? []);
  return success({ project: changed(project, { added }), keysOf: inOrder, taken: keysOf.size }, findings);
}

/** Points with heights of one layer, where they are many, as one thing. */
function spotHeightLayers(
  taken: readonly TakenThing[],
): readonly { readonly thing: FoundThing; readonly members: readonly TakenThing[] }[] {
  const layers = new Map<string | null, TakenThing[]>();
  for (const each of taken) {
    const { geometry, layer } = each.thing;
    if (each.role !== "elevation" || geometry.type !== "Point" || geometry.coordinates.length < 3) continue;
    if (strayPosition(foundShape(geometry)) !== null) continue;
    const members = layers.get(layer);
    if (members === undefined) layers.set(layer, [each]);
    else members.push(each);
  }
  return [...layers].flatMap(([layer, members]) => {
    if (members.length <= mostSpotHeights) return [];
    const coordinates = members.flatMap(({ thing }) => positionsIn(foundShape(thing.geometry)));
    const thing: FoundThing = { name: layer, layer, geometry: { type: "MultiPoint", coordinates }, values: [] };
    return [{ thing, members }];
  });
}

/** Where a project begins that has no parcel yet: at the first parcel that is taken, else at the first thing. */
function middleOf(taken: readonly TakenThing[]): LonLat {
  const sound = taken.filter(({ thing }) => strayPosition(foundShape(thing.geometry)) === null);
  const first = sound.find(({ role }) => role === "parcel") ?? sound[0];
  const [at] = first === undefined ? [] : positionsIn(foundShape(first.thing.geometry));
  return at === undefined ? lonLat(0, 0) : placeOf(at);
}

/** Role and places of a feature, to tell the same thing in the same place. */
function printOf(feature: Json | JsonObject): string {
  if (!isJsonObject(feature)) return "";
  const properties = member(feature, "properties") ?? null;
  const role = isJsonObject(properties) ? (member(properties, "role") ?? null) : null;
  return JSON.stringify([role, member(feature, "geometry") ?? null], (_, value: Json) =>
    typeof value === "number" ? Number(value.toFixed(7)) : value,
  );
}
