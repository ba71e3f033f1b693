import { batch } from "@preact/signals";
import { drawnThing, thingLabel } from "../../core/drawing/drawn.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Store } from "../store.ts";
import { courseText } from "./course-text.ts";
import { draw } from "./draw.ts";
import { frameNear } from "./drawing-frame.ts";
import type { Tool } from "./drawing-state.ts";
import { cornersOf } from "./tools.ts";

/** Takes up a tool with nothing drawn yet; what was being drawn is put aside. */
export function takeUp(store: Store, tool: Tool, corners: readonly LonLat[] = []): void {
  const { drawing } = store;
  batch(() => {
    putAside(store);
    if (corners.length > 0) drawing.putAside.value = null;
    drawing.isAwake.value = true;
    drawing.isPaletteOpen.value = false;
    drawing.selected.value = null;
    drawing.side.value = null;
    drawing.trouble.value = null;
    drawing.tool.value = tool;
    drawing.corners.value = corners;
    drawing.held.value = null;
    drawing.said.value = `${tool.label}: ${firstStep(tool)}`;
    store.row.value = null;
  });
}

function firstStep(tool: Tool): string {
  if (tool.isWalked) return "go to the first corner and put it there.";
  return tool.shape === "point" ? "choose its place." : "place the first corner.";
}

/** Places the next corner; ends the drawing when it has all it can have. */
export function placeCorner(store: Store, at: LonLat): void {
  const { drawing } = store;
  const tool = drawing.tool.peek();
  if (!tool) return;
  const before = drawing.corners.peek();
  if (before.length >= cornersOf(tool).most) {
    // A spot that waits for its height: the new place takes the place of the old one.
    drawing.corners.value = [at];
    return;
  }
  const corners = [...before, at];
  batch(() => {
    drawing.corners.value = corners;
    drawing.held.value = null;
    drawing.trouble.value = null;
    drawing.said.value = placedText(store, corners);
  });
  if (corners.length >= cornersOf(tool).most && tool.role !== "elevation") finish(store);
}

function placedText(store: Store, corners: readonly LonLat[]): string {
  const [from, to] = corners.slice(-2);
  const name = `Corner ${corners.length} placed`;
  if (!from || !to) return `${name}.`;
  const frame = frameNear(store, corners[0] ?? from);
  return frame ? `${name}, ${courseText(frame, from, to, store.units.peek())}.` : `${name}.`;
}

/** Takes the last corner back; false when there is none. */
export function takeBack(store: Store): boolean {
  const { corners, said, held, trouble } = store.drawing;
  if (corners.peek().length === 0) return false;
  batch(() => {
    corners.value = corners.peek().slice(0, -1);
    held.value = null;
    trouble.value = null;
    said.value = `Corner ${corners.peek().length + 1} taken back.`;
  });
  return true;
}

/** Gives the drawing up; its corners stay at hand to be taken up again. */
export function putAside(store: Store): void {
  const { drawing } = store;
  const [tool, corners] = [drawing.tool.peek(), drawing.corners.peek()];
  if (!tool) return;
  batch(() => {
    if (corners.length > 0) drawing.putAside.value = { tool, corners };
    drawing.tool.value = null;
    drawing.corners.value = [];
    drawing.held.value = null;
    drawing.trouble.value = null;
    drawing.said.value = corners.length > 0 ? "Drawing put aside." : "Nothing drawn.";
  });
}

/** Goes on with what was put aside. */
export function takeUpAgain(store: Store): void {
  const aside = store.drawing.putAside.peek();
  if (aside) takeUp(store, aside.tool, aside.corners);
}

/** Makes what was drawn a thing of the project and selects it. What speaks against it is said, and the drawing stays. */
export function finish(store: Store, height: string | null = null): void {
  const { drawing } = store;
  const [tool, corners] = [drawing.tool.peek(), drawing.corners.peek()];
  if (!tool) return;
  if (tool.role === "measure") {
    putAside(store);
    drawing.putAside.value = null;
    return;
  }
  const { least } = cornersOf(tool);
  if (corners.length < least) {
    const missing = least - corners.length;
    drawing.trouble.value = `${tool.label}: ${missing} more ${missing === 1 ? "corner is" : "corners are"} needed.`;
    return;
  }
  if (tool.role === "elevation" && height === null) {
    drawing.trouble.value = "Type the height of this place.";
    return;
  }
  const drawn = draw(store, tool, corners, height);
  if (!drawn.ok) {
    drawing.trouble.value = drawn.trouble;
    return;
  }
  batch(() => {
    drawing.tool.value = null;
    drawing.corners.value = [];
    drawing.held.value = null;
    drawing.trouble.value = null;
    drawing.putAside.value = null;
    drawing.selected.value = drawn.key;
    const project = store.project.peek();
    const thing = project ? drawnThing(project, drawn.key) : null;
    drawing.said.value = `${thing ? thingLabel(thing) : tool.label} drawn.`;
  });
}
