import { parseProject } from "../../core/project/parse.ts";
import type { UnitSystem } from "../../core/units.ts";
import type { Store } from "../store.ts";
import { beginProject } from "./begin-project.ts";

/** Begins with nothing drawn. */
export function newProject(store: Store, units: UnitSystem, name = "New parcel"): void {
  const read = parseProject(
    JSON.stringify({ type: "FeatureCollection", features: [], tautrow: { version: 1, name, units } }),
  );
  if (!read.ok) throw new Error("an empty project can not be read");
  beginProject(store, read.value);
}
