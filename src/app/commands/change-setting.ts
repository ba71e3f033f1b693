import type { Finding } from "../../core/finding.ts";
import { withSetting } from "../../core/project/edits.ts";
import type { Json } from "../../core/project/project.ts";
import type { Store } from "../store.ts";
import { edit, type StepName } from "./edit.ts";

/**
 * Writes one setting into the project as a named step; returns what speaks against it (then nothing is changed), or an empty list.
 * A path under `rows`, `trellis` or `drip` is written for the block that is shown when there are several.
 */
export function changeSetting(store: Store, path: string, value: Json, step?: StepName): readonly Finding[] {
  return edit(store, step ?? { name: `${path} ${value}` }, (project) =>
    withSetting(project, settingPath(store, path), value),
  );
}

/** The path of a setting for the shown block, when there are several. */
export function settingPath(store: Store, path: string): string {
  const isOfBlock = /^(rows|trellis|drip)\./.test(path) && (store.project.value?.blocks.length ?? 0) > 1;
  return isOfBlock ? `blocks.${store.blockId.value}.${path}` : path;
}
