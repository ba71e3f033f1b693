import { batch } from "@preact/signals";
import type { Finding } from "../../core/finding.ts";
import { parseProject } from "../../core/project/parse.ts";
import type { Store } from "../store.ts";

/** Opens a project file from its text; a file with nothing to show on a map is refused and what was open stays open. */
export function openProject(store: Store, text: string, file: string): void {
  const read = parseProject(text);
  const canBeSeen = read.ok && (read.value.parcels.length > 0 || read.value.findings.some(isSeen));
  if (!read.ok || !canBeSeen) {
    const findings = [...(read.ok ? read.value.findings : []), ...read.findings];
    store.refusal.value = { file, findings: [...new Set(findings)] };
    return;
  }
  const project = read.value;
  batch(() => {
    store.project.value = project;
    store.units.value = project.units;
    store.blockId.value = project.blocks[0]?.id ?? null;
    store.row.value = null;
    store.finding.value = null;
    store.sweep.value = null;
    store.refusal.value = null;
    store.opened.value += 1;
  });
}

/** An error with a place is best understood on the map. */
function isSeen({ severity, at }: Finding): boolean {
  return severity === "error" && at !== null;
}
