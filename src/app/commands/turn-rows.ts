import type { Finding } from "../../core/finding.ts";
import type { Store } from "../store.ts";
import { changeSetting } from "./change-setting.ts";

/** Turns the rows of the shown block to a bearing, or to one that the core finds ("best", "longest-edge"). */
export function turnRows(store: Store, bearing: number | string): readonly Finding[] {
  return changeSetting(store, "rows.bearing", bearing);
}
