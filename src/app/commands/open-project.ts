import type { Finding } from "../../core/finding.ts";
import { parseProject } from "../../core/project/parse.ts";
import type { Source } from "../keeping/keeping-state.ts";
import type { Store } from "../store.ts";
import { beginProject } from "./begin-project.ts";

/** Opens a project file from its text; a file with nothing to show on a map is refused and what was open stays open. */
export function openProject(store: Store, text: string, file: string, source?: Source): boolean {
  const read = parseProject(text);
  const canBeSeen = read.ok && (read.value.parcels.length > 0 || read.value.findings.some(isSeen));
  if (!read.ok || !canBeSeen) {
    const findings = [...(read.ok ? read.value.findings : []), ...read.findings];
    store.refusal.value = { file, findings: [...new Set(findings)] };
    return false;
  }
  beginProject(store, read.value, source);
  return true;
}

/** An error with a place is best understood on the map. */
function isSeen({ severity, at }: Finding): boolean {
  return severity === "error" && at !== null;
}
