import type { Finding } from "../../core/finding.ts";
import { withSetting } from "../../core/project/edits.ts";
import type { Json } from "../../core/project/project.ts";
import type { Store } from "../store.ts";

/**
 * Writes one setting into the project; returns what speaks against it (then nothing is changed), or an empty list.
 * A path under `rows`, `trellis` or `drip` is written for the block that is shown when there are several.
 */
export function changeSetting(store: Store, path: string, value: Json): readonly Finding[] {
  const project = store.project.value;
  if (!project) return [];
  const ofBlock = project.blocks.length > 1 && /^(rows|trellis|drip)\./.test(path);
  const changed = withSetting(project, ofBlock ? `blocks.${store.blockId.value}.${path}` : path, value);
  if (!changed.ok) return changed.findings;
  store.project.value = changed.value;
  return [];
}
