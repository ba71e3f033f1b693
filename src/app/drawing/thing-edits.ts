import type { EdgeRef } from "../../core/drawing/drawn.ts";
import { withBearingAlong, withEdgeSetback, withTapedSide } from "../../core/drawing/edges.ts";
import { withoutPath, withoutThing, withThingProperty } from "../../core/drawing/things.ts";
import type { FeatureKey, Json } from "../../core/project/project.ts";
import { edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { labelOf, tell } from "./corner-edits.ts";

/** Takes a drawn thing away as one step. */
export function removeThing(store: Store, key: FeatureKey): string {
  const label = labelOf(store, key);
  const findings = edit(store, { name: `Take away ${label}` }, (project) => withoutThing(project, key));
  return tell(store, findings, `${label} taken away.`);
}

/** Takes a hole, or one of several outlines, away as one step. */
export function removePath(store: Store, key: FeatureKey, path: number, name: string): string {
  const findings = edit(store, { name: `Take ${name} out of ${labelOf(store, key)}` }, (project) =>
    withoutPath(project, key, path),
  );
  return tell(store, findings, `${name} taken out.`);
}

/** Writes a property of a drawn thing as one step; null takes it out. Returns why not, or an empty text. */
export function setProperty(store: Store, key: FeatureKey, name: string, label: string, value: Json): string {
  const told = value === null ? `${label} as usual` : `${label} ${String(value)}`;
  const findings = edit(store, { name: `${labelOf(store, key)}: ${told}` }, (project) =>
    withThingProperty(project, key, name, value),
  );
  return tell(store, findings, `${told}.`);
}

/** Gives a side a setback of its own, or the usual one again (null). */
export function setSideSetback(store: Store, side: EdgeRef, value: Json): string {
  const told = value === null ? "as usual" : String(value);
  const findings = edit(store, { name: `Setback of side ${side.edge + 1} ${told}` }, (project) =>
    withEdgeSetback(project, side, value),
  );
  return tell(store, findings, `Setback of side ${side.edge + 1} ${told}.`);
}

/** Notes what a tape read along a side, or forgets it (null). */
export function setTapedSide(store: Store, side: EdgeRef, value: Json): string {
  const told = value === null ? "not taped" : `taped ${String(value)}`;
  const findings = edit(store, { name: `Side ${side.edge + 1} ${told}` }, (project) =>
    withTapedSide(project, side, value),
  );
  return tell(store, findings, `Side ${side.edge + 1} ${told}.`);
}

/** Has the rows of the shown block run along a side from now on. */
export function turnAlongSide(store: Store, side: EdgeRef): string {
  const block = store.blockId.peek() ?? "1";
  const findings = edit(store, { name: `Rows along side ${side.edge + 1} of ${labelOf(store, side.key)}` }, (project) =>
    withBearingAlong(project, block, side),
  );
  return tell(store, findings, `Rows run along side ${side.edge + 1} now.`);
}
