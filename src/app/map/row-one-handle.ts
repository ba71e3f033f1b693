import { effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { placeAt } from "../../core/drawing/place.ts";
import { type LonLat, lonLat, planePoint } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";
import { withSetting } from "../../core/project/edits.ts";
import { changeSetting, settingPath } from "../commands/change-setting.ts";
import { draft, dropDraft } from "../commands/edit.ts";
import type { Store } from "../store.ts";

interface Subject {
  readonly frame: Frame;
  /** Middle of row 1. */
  readonly at: LonLat;
  readonly bearing_deg: number;
  readonly row: string;
}

const step_m = 0.1;
const largeStep_m = 1;
const signs: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/** A knob on row 1: dragged across the rows, by mouse, touch or keys, it says where row 1 runs. Returns what takes it away. */
export function addRowOneHandle(map: MapLibreMap, store: Store): () => void {
  const knob = document.createElement("button");
  knob.type = "button";
  knob.className = "row-one-handle";
  knob.title = "Drag across the rows to set where row 1 runs; arrow keys move it by 0.1 m, with Shift by 1 m";
  map.getContainer().append(knob);
  let subject: Subject | null = null;
  let held: { readonly pointer: number; readonly grip: { readonly x: number; readonly y: number } } | null = null;
  let waiting: { readonly x: number; readonly y: number } | null = null;
  let through: LonLat | null = null;
  let frame = 0;
  let stay = 0;

  const place = (): void => {
    if (!subject) return;
    const { x, y } = map.project([subject.at[0], subject.at[1]]);
    const turn = subject.bearing_deg - map.getBearing();
    knob.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%) rotate(${turn}deg)`;
  };
  const show = (): void => {
    subject = rowOneOf(store);
    knob.hidden = subject === null;
    if (!subject) return;
    knob.setAttribute("aria-label", `Row ${subject.row}: where it runs`);
    place();
  };
  const follow = (): void => {
    frame = 0;
    if (!waiting) return;
    const { lng, lat } = map.unproject([waiting.x, waiting.y]).wrap();
    waiting = null;
    through = lonLat(lng, lat);
    const value = [lng, lat];
    draft(store, (project) => withSetting(project, settingPath(store, "rows.rowOne"), { through: value }));
  };
  const set = (to: LonLat, joins?: string): void => {
    const name = "Move row 1";
    changeSetting(store, "rows.rowOne", { through: [to[0], to[1]] }, joins === undefined ? { name } : { name, joins });
  };
  const pressed = (event: PointerEvent): void => {
    if (!subject || event.button !== 0) return;
    event.preventDefault();
    knob.focus({ preventScroll: true });
    knob.setPointerCapture(event.pointerId);
    const at = map.project([subject.at[0], subject.at[1]]);
    held = { pointer: event.pointerId, grip: { x: event.clientX - at.x, y: event.clientY - at.y } };
    through = null;
  };
  const moved = (event: PointerEvent): void => {
    if (event.pointerId !== held?.pointer) return;
    waiting = { x: event.clientX - held.grip.x, y: event.clientY - held.grip.y };
    if (frame === 0) frame = requestAnimationFrame(follow);
  };
  const released = (event: PointerEvent): void => {
    if (event.pointerId !== held?.pointer) return;
    cancelAnimationFrame(frame);
    if (frame !== 0) follow();
    held = null;
    if (through && event.type === "pointerup") set(through);
    else dropDraft(store);
  };
  const key = (event: KeyboardEvent): void => {
    const sign = signs[event.key];
    if (sign === undefined || !subject) return;
    event.preventDefault();
    const across_deg = (subject.bearing_deg + (sign > 0 ? 90 : 270)) % 360;
    const length_m = event.shiftKey ? largeStep_m : step_m;
    set(placeAt(subject.frame, subject.at, { length_m, bearing_deg: across_deg }), `row 1 by keys ${stay}`);
  };
  const arrived = (): void => {
    stay++;
  };
  knob.addEventListener("pointerdown", pressed);
  knob.addEventListener("pointermove", moved);
  knob.addEventListener("pointerup", released);
  knob.addEventListener("pointercancel", released);
  knob.addEventListener("keydown", key);
  knob.addEventListener("focus", arrived);
  map.on("move", place);
  map.on("resize", place);
  const stop = effect(show);
  return () => {
    stop();
    cancelAnimationFrame(frame);
    map.off("move", place);
    map.off("resize", place);
    knob.remove();
  };
}

/** Row 1 of the shown block, unless it stands already. */
function rowOneOf(store: Store): Subject | null {
  const [plan, block] = [store.plan.value, store.blockId.value];
  const [rows, ground] = [plan?.rows, plan?.ground];
  const planned = rows?.blocks.find((each) => each.block === block);
  const row = rows?.rows.find((each) => each.block === block && each.given === null);
  if (!ground || !planned || !row) return null;
  const [start, end] = [row.start, row.end];
  const middle = planePoint((start[0] + end[0]) / 2, (start[1] + end[1]) / 2);
  return { frame: ground.frame, at: ground.frame.toLonLat(middle), bearing_deg: planned.bearing_deg, row: row.id };
}
