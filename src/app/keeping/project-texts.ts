import { withSetting } from "../../core/project/edits.ts";
import type { Project } from "../../core/project/project.ts";

/** The project under another name; the same project where its settings can not be written, because a newer program made them. */
export function renamed(project: Project, name: string): Project {
  const outcome = withSetting(project, "name", name);
  return outcome.ok ? outcome.value : project;
}

/** Version of the format that the project's settings name, or null. */
export function formatVersionOf(project: Project): number | null {
  const version = project.document.tautrow?.version;
  return typeof version === "number" ? version : null;
}
