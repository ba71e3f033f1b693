import type { Finding } from "../../core/finding.ts";
import { withSetting } from "../../core/project/edits.ts";
import type { Json } from "../../core/project/project.ts";
import { blockPath } from "../../core/project/wires-as-written.ts";
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
  const project = store.project.value;
  const isOfBlock = /^(rows|trellis|drip)\./.test(path);
  return project && isOfBlock ? blockPath(project, `${store.blockId.value}`, path) : path;
}
