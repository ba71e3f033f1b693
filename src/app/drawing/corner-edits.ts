import { withCornerInserted, withCornerMoved, withoutCorner } from "../../core/drawing/corners.ts";
import { type CornerRef, drawnThing, type EdgeRef, thingLabel } from "../../core/drawing/drawn.ts";
import type { Finding } from "../../core/finding.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { draft, edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { whyNot } from "./draw.ts";

/** "Parcel" for the name of a step. */
export function labelOf(store: Store, key: string): string {
  const project = store.project.peek();
  const thing = project ? drawnThing(project, key) : null;
  return thing ? thingLabel(thing) : "thing";
}

/** Says how an edit went: what it did, or why it was not done. Returns the sentence of refusal, or an empty text. */
export function tell(store: Store, findings: readonly Finding[], done: string): string {
  const { drawing } = store;
  const refusal = findings.length > 0 ? whyNot(store, findings) : "";
  drawing.trouble.value = refusal === "" ? null : refusal;
  if (refusal === "") drawing.said.value = done;
  return refusal;
}

/** Moves a corner as one step; returns why not, or an empty text. */
export function moveCorner(store: Store, ref: CornerRef, to: LonLat, joins?: string): string {
  const name = `Move corner ${ref.corner + 1} of ${labelOf(store, ref.key)}`;
  const findings = edit(store, { name, ...(joins === undefined ? {} : { joins }) }, (project) =>
    withCornerMoved(project, ref, to),
  );
  return tell(store, findings, `Corner ${ref.corner + 1} moved.`);
}

/** Shows a corner moved while it is held. */
export function moveCornerMeanwhile(store: Store, ref: CornerRef, to: LonLat): void {
  draft(store, (project) => withCornerMoved(project, ref, to));
}

/** Puts a corner into a side as one step. */
export function insertCorner(store: Store, ref: EdgeRef, at: LonLat): string {
  const name = `Put a corner into side ${ref.edge + 1} of ${labelOf(store, ref.key)}`;
  const findings = edit(store, { name }, (project) => withCornerInserted(project, ref, at));
  return tell(store, findings, `Corner ${ref.edge + 2} put in.`);
}

/** Shows a corner put into a side while it is held. */
export function insertCornerMeanwhile(store: Store, ref: EdgeRef, at: LonLat): void {
  draft(store, (project) => withCornerInserted(project, ref, at));
}

/** Takes a corner out as one step. */
export function removeCorner(store: Store, ref: CornerRef): string {
  const name = `Take corner ${ref.corner + 1} out of ${labelOf(store, ref.key)}`;
  const findings = edit(store, { name }, (project) => withoutCorner(project, ref));
  return tell(store, findings, `Corner ${ref.corner + 1} taken out.`);
}
