import type { Finding } from "../finding.ts";
import { failure, type Outcome, success } from "../outcome.ts";
import { bareGeometry, crsRead, notGeoJson } from "./findings.ts";
import { isJsonObject, member, shown, withMember } from "./json-value.ts";
import type { Json, JsonObject, ProjectDocument } from "./project.ts";

const geometryTypes: ReadonlySet<unknown> = new Set([
  "Point",
  "MultiPoint",
  "LineString",
  "MultiLineString",
  "Polygon",
  "MultiPolygon",
  "GeometryCollection",
]);

/**
 * The value as a project document. A FeatureCollection is taken as the very object it is; a bare Feature or geometry gets a collection
 * around it. Its features are not looked at here. Findings: `project/not-geojson`, `project/bare-geometry`.
 */
export function foldDocument(value: Json): Outcome<ProjectDocument> {
  if (!isJsonObject(value)) return failure([notGeoJson(`it holds ${value === null ? "nothing" : shown(value)}`)]);
  const type = member(value, "type");
  if (type === "FeatureCollection") {
    if (isDocument(value)) return success(value);
    const features = member(value, "features");
    const found = features === undefined ? "has no features" : `has ${shown(features)} in place of its features`;
    return failure([notGeoJson(`its FeatureCollection ${found}`)]);
  }
  if (type === "Feature") return bare(value, "Feature");
  if (typeof type === "string" && geometryTypes.has(type)) {
    return bare({ type: "Feature", properties: {}, geometry: value }, type);
  }
  return failure([notGeoJson(type === undefined ? 'it has no "type"' : `its type is ${shown(type)}`)]);
}

function bare(feature: JsonObject, kind: string): Outcome<ProjectDocument> {
  const folded: JsonObject = { type: "FeatureCollection", features: [feature] };
  if (!isDocument(folded)) throw new Error("a collection with a list of features is a document");
  return success(folded, [bareGeometry({ feature: "#0", at: null }, kind)]);
}

/**
 * Only the frame is looked at. Entries that are no features stay where they are, so that nothing of the file is lost;
 * an error finding names them, and nothing but the reading of features looks into the list before it.
 */
function isDocument(value: unknown): value is ProjectDocument {
  if (!isJsonObject(value)) return false;
  return member(value, "type") === "FeatureCollection" && Array.isArray(member(value, "features"));
}

/** The name of a coordinate system the document states in the old way, with what is made of it. */
export function statedSystem(document: ProjectDocument): { readonly name: string; readonly finding: Finding } | null {
  const { crs } = document;
  if (crs === undefined || crs === null) return null;
  const properties = isJsonObject(crs) ? member(crs, "properties") : undefined;
  const name = isJsonObject(properties) ? member(properties, "name") : undefined;
  const text = typeof name === "string" ? name : shown(crs);
  return { name: text, finding: crsRead(text, /(?:CRS:?84|EPSG:{1,2}[\d.]*:?4326)$/i.test(text)) };
}

const noEntries: readonly Json[] = [];

/** The features as the JSON they are: entries that are no features stand among them. */
export function entriesOf(document: ProjectDocument): readonly Json[] {
  const features = isJsonObject(document) ? member(document, "features") : undefined;
  return Array.isArray(features) ? features : noEntries;
}

/** The document with one member set: its features, its settings, or its bounding box. */
export function withDocumentMember(
  document: ProjectDocument,
  name: "features" | "tautrow" | "bbox",
  value: Json,
): ProjectDocument {
  const changed = isJsonObject(document) ? withMember(document, name, value) : null;
  if (!isDocument(changed)) throw new Error("a document stays one when its features are a list");
  return changed;
}
