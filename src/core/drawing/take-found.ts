import type { Geometry } from "geojson";
import { type Outcome, success } from "../outcome.ts";
import type { Project, Role } from "../project/project.ts";

/** Something out of a file of another format, as it is to be taken into a project. */
export interface FoundThing {
  readonly name: string | null;
  readonly layer: string | null;
  /** Longitude and latitude, degrees; third numbers are heights in metres. */
  readonly geometry: Geometry;
  readonly values: readonly (readonly [name: string, value: string | number | boolean])[];
}

/** The role that a found thing most likely plays, by its own role or kind, its layer, its name and its shape; null: none can be told. */
export function likelyRole(_thing: FoundThing): Role | null {
  return null;
}

/** The roles that a thing of that shape can play. */
export function possibleRoles(_geometry: Geometry): readonly Role[] {
  return [];
}

/** A project with things taken in, each in the role chosen for it. Findings: `drawing/…` for each that could not be taken as chosen. */
export function withFound(
  project: Project,
  _taken: readonly { readonly thing: FoundThing; readonly role: Role }[],
): Outcome<Project> {
  return success(project);
}
