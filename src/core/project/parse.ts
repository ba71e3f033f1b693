import { failure, type Outcome, success } from "../outcome.ts";
import { deriveProject } from "./derive.ts";
import { foldDocument } from "./document.ts";
import { readJson } from "./json-text.ts";
import type { Project } from "./project.ts";

/**
 * Reads a project file: a GeoJSON FeatureCollection with its settings, or a bare Feature or geometry that is taken as the parcel.
 * Never throws and never changes what it read: the document is kept as it is, the parts are mended copies. Gives no project only
 * when there is nothing to keep (no JSON, no GeoJSON); otherwise the project with its findings, errors among them.
 * Findings: all of `project/…`, see findings.ts.
 */
export function parseProject(text: string): Outcome<Project> {
  const json = readJson(text);
  if (!json.ok) return failure(json.findings);
  const document = foldDocument(json.value);
  if (!document.ok) return failure(document.findings);
  const project = deriveProject(document.value, null, document.findings);
  return success(project, project.findings);
}
