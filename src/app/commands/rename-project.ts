import type { Finding } from "../../core/finding.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";

/** Gives the project another name; nothing happens when it is the same or blank. */
export function renameProject(store: Store, typed: string): readonly Finding[] {
  const name = typed.trim();
  if (name === "" || name === store.project.value?.name) return [];
  return changeSetting(store, "name", name, { name: `Rename to ${name}` });
}
