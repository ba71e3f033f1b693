import { featureKeys } from "../identity.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { deriveProject } from "../project/derive.ts";
import { entriesOf, withDocumentMember } from "../project/document.ts";
import { isJsonObject, member, withMember } from "../project/json-value.ts";
import { withoutEntries } from "../project/keep-keys.ts";
import { formatVersion, migrate } from "../project/migrate.ts";
import type { FeatureKey, Json, JsonObject, Project, ProjectDocument } from "../project/project.ts";
import { withBearingsStated } from "./bearing-edges.ts";
import { withBoundingBox } from "./bounding-box.ts";
import { originOf } from "./frame-at.ts";
import { geometryPaths, withPaths } from "./geometry-paths.ts";
import { placeOf } from "./position.ts";

/** What stands in place of the paths of a feature: lists of positions by the number of the path; a path that is not named stays. */
export type PathChanges = ReadonlyMap<number, readonly (readonly Json[])[]>;

/** An edit in the terms of the file. Features that are not named stay the same objects. */
export interface Change {
  readonly paths?: ReadonlyMap<FeatureKey, PathChanges>;
  readonly properties?: ReadonlyMap<FeatureKey, JsonObject>;
  readonly gone?: ReadonlySet<FeatureKey>;
  readonly added?: readonly JsonObject[];
}

/**
 * The project with a change made in its document. A feature of which nothing is left goes; rows that ran along an edge that goes keep
 * the bearing they had, as a number. The origin of the frame is written down as soon as there is a parcel, so that no later edit turns
 * anything.
 */
export function changed(project: Project, change: Change): Project {
  const { document } = project;
  const entries = entriesOf(document);
  const keys = featureKeys(entries);
  const gone = new Set(change.gone);
  const all = entries.map((entry, i): Json => {
    const key = keys[i] ?? `#${i}`;
    if (gone.has(key) || !isJsonObject(entry)) return entry;
    const feature = withChange(entry, change.paths?.get(key), change.properties?.get(key));
    if (feature === null) gone.add(key);
    return feature ?? entry;
  });
  const left = gone.size === 0 ? all : withoutEntries(all, gone);
  const features = [...left, ...(change.added ?? [])];
  const isSame = features.length === entries.length && features.every((entry, i) => entry === entries[i]);
  if (isSame) return project;
  const settled = withOrigin(withBearingsStated(document, project, gone), originOf(project));
  const edited = withBox(withDocumentMember(settled, "features", features), features);
  const next = deriveProject(edited, project, []);
  const origin = originOf(next);
  const begun = next.frameOrigin === null ? withOrigin(next.document, origin) : next.document;
  return begun === next.document ? next : deriveProject(begun, project, []);
}

function withChange(
  feature: JsonObject,
  paths: PathChanges | undefined,
  properties: JsonObject | undefined,
): JsonObject | null {
  let next = feature;
  if (paths !== undefined) {
    const before = member(feature, "geometry") ?? null;
    const geometry = withPaths(before, ({ path, positions }) => paths.get(path) ?? [positions]);
    if (geometry === null) return null;
    if (geometry !== before) next = withBoundingBox(withMember(next, "geometry", geometry), () => placesIn(geometry));
  }
  return properties === undefined ? next : withMember(next, "properties", properties);
}

function placesIn(geometry: Json): readonly LonLat[] {
  return geometryPaths(geometry).flatMap(({ positions }) => positions.map(placeOf));
}

/** The document with its own bounding box, where it states one, around what is drawn now. */
function withBox(document: ProjectDocument, features: readonly Json[]): ProjectDocument {
  if (!Array.isArray(document.bbox)) return document;
  const box = withBoundingBox({ bbox: document.bbox }, () =>
    features.flatMap((feature) => (isJsonObject(feature) ? placesIn(member(feature, "geometry") ?? null) : [])),
  );
  return withDocumentMember(document, "bbox", member(box, "bbox") ?? null);
}

/** The document with the origin of the frame, when it states none and its settings can be written to. */
function withOrigin(document: ProjectDocument, origin: LonLat | null): ProjectDocument {
  const settings = document.tautrow ?? { version: formatVersion };
  if (origin === null || !isJsonObject(settings) || migrate(settings).findings.length > 0) return document;
  const frame = member(settings, "frame") ?? {};
  if (!isJsonObject(frame) || (member(frame, "origin") ?? null) !== null) return document;
  const stated = withMember(settings, "frame", withMember(frame, "origin", [origin[0], origin[1]]));
  return withDocumentMember(document, "tautrow", stated);
}
