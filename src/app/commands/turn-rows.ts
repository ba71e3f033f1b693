import type { Finding } from "../../core/finding.ts";
import { withSetting } from "../../core/project/edits.ts";
import { formatQuantity } from "../../core/units.ts";
import type { Store } from "../store.ts";
import { changeSetting, settingPath } from "./change-setting.ts";
import { draft } from "./edit.ts";

/** Turns the rows of the shown block to a bearing, or to one that the core finds ("best", "longest-edge"). */
export function turnRows(store: Store, bearing: number | string, joins?: string): readonly Finding[] {
  const told = typeof bearing === "number" ? formatQuantity("angle", bearing, "metric") : `the ${bearing}`;
  const name = `Turn the rows to ${told.replaceAll("-", " ")}`;
  return changeSetting(store, "rows.bearing", bearing, joins === undefined ? { name } : { name, joins });
}

/** Shows the rows turned while the handle is held. */
export function turnRowsMeanwhile(store: Store, bearing_deg: number): readonly Finding[] {
  return draft(store, (project) => withSetting(project, settingPath(store, "rows.bearing"), bearing_deg));
}
