import type { Feature, Geometry } from "geojson";
import { featureKeys } from "../identity.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { deriveProject } from "./derive.ts";
import { entriesOf, withDocumentMember } from "./document.ts";
import { badSetting } from "./findings.ts";
import { isJsonObject, shown } from "./json-value.ts";
import { withoutEntries } from "./keep-keys.ts";
import { formatVersion, migrate } from "./migrate.ts";
import type { FeatureKey, Json, JsonObject, Project, ProjectDocument } from "./project.ts";
import { setSetting } from "./set-setting.ts";

/*
 * An edit gives a new project and leaves the old one as it was. What it does not touch stays the same object: the document's features
 * and members, and the parts read from them.
 */

/**
 * The project with one setting changed. The path names it as the file does: "rows.bearing" (for every block: what a block states for
 * itself is taken out), "blocks.east.rows.bearing", "ground.setback", "rows.minRow.vines", "trellis.wires.0.height". The value is as in
 * the file, a number in SI or text with a unit; null takes the setting out, so that the usual value holds again.
 * Findings when it is refused: `project/bad-setting`, `project/setting-out-of-range`, `project/newer-version`.
 */
export function withSetting(project: Project, path: string, value: Json): Outcome<Project> {
  return withSettings(project, [[path, value]]);
}

/** The project with several settings changed in turn; all of them or, when one is refused, none. Findings as of `withSetting`. */
export function withSettings(
  project: Project,
  changes: readonly (readonly [path: string, value: Json])[],
): Outcome<Project> {
  if (changes.length === 0) return success(project, project.findings);
  const stated = project.document.tautrow;
  if (stated !== undefined && !isJsonObject(stated)) {
    return failure([badSetting("tautrow", shown(stated), "the settings must be an object")]);
  }
  const current = stated ?? { version: formatVersion };
  const { findings } = migrate(current);
  if (findings.length > 0) return failure(findings);
  let settings: JsonObject = current;
  const refused = changes.flatMap(([path, value]) => {
    const outcome = setSetting(settings, path, value);
    if (!outcome.ok) return outcome.findings;
    settings = outcome.value;
    return [];
  });
  if (refused.length > 0) return failure(refused);
  const changed = deriveProject({ ...project.document, tautrow: settings }, project, []);
  return success(changed, changed.findings);
}

/** The project with a feature put in place of the one with that key (its own id when none is given), or at the end when there is none. */
export function withFeature(project: Project, feature: Feature<Geometry | null>, key?: FeatureKey): Project {
  const { features } = project.document;
  const i = featureKeys(features).indexOf(key ?? String(feature.id ?? ""));
  const changed = i < 0 ? [...features, feature] : features.map((each, k) => (k === i ? feature : each));
  return withFeatures(project, changed);
}

/** The project without the feature of that key, the others keeping theirs; the same project when there is none. */
export function withoutFeature(project: Project, key: FeatureKey): Project {
  const entries = entriesOf(project.document);
  if (!featureKeys(entries).includes(key)) return project;
  const left = withoutEntries(entries, new Set([key]));
  return deriveProject(withDocumentMember(project.document, "features", left), project, []);
}

/** The project with the origin of its local frame; refused as `withSetting` is. */
export function withFrameOrigin(project: Project, [lon_deg, lat_deg]: LonLat): Outcome<Project> {
  return withSetting(project, "frame.origin", [lon_deg, lat_deg]);
}

function withFeatures(project: Project, features: ProjectDocument["features"]): Project {
  return deriveProject({ ...project.document, features }, project, []);
}
