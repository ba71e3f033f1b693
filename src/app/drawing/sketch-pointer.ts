import type { Map as MapLibreMap, MapMouseEvent } from "maplibre-gl";
import type { Store } from "../store.ts";
import { type Around, aim, type Pointer } from "./aim.ts";
import type { Tool } from "./drawing-state.ts";
import { distance_px, type Pixel, pixelOf } from "./pixels.ts";
import { finish, placeCorner } from "./sketch.ts";
import { cornersOf } from "./tools.ts";

/** A second press this near and this soon is the second half of a double click, not another corner. */
const same_px = 6;
const same_ms = 450;

/** Lets a pointer draw on the map while a tool is taken up. Returns what stops it. */
export function followPointer(map: MapLibreMap, store: Store): () => void {
  const { drawing } = store;
  let isTouch = false;
  let lastPress: { readonly at: Pixel; readonly time: number; readonly tool: Tool } | null = null;

  const around = (): Around => {
    const corners = drawing.corners.peek();
    const tool = drawing.tool.peek();
    const canClose = tool !== null && tool.shape === "area" && corners.length >= Math.max(3, cornersOf(tool).least);
    return {
      previous: corners.at(-1),
      beforePrevious: corners.at(-2),
      first: corners[0],
      closing: canClose ? corners[0] : undefined,
    };
  };
  const pointer = (event: MapMouseEvent): Pointer => ({
    pixel: event.point,
    isTouch,
    isFree: event.originalEvent.altKey,
  });
  const pressed = (event: PointerEvent): void => {
    isTouch = event.pointerType === "touch";
  };
  const moved = (event: MapMouseEvent): void => {
    const tool = drawing.tool.peek();
    // After the control, which shows where rows can be chosen: now they can not.
    if (tool) map.getCanvas().style.cursor = "crosshair";
    // A finger has no place before it presses.
    if (!tool || isTouch || tool.isWalked) return;
    if (drawing.corners.peek().length >= cornersOf(tool).most) return;
    drawing.held.value = aim(map, store, pointer(event), around());
  };
  const left = (): void => {
    if (drawing.tool.peek()) drawing.held.value = null;
  };
  const clicked = (event: MapMouseEvent): void => {
    const tool = drawing.tool.peek();
    if (!tool || tool.isWalked) return;
    const before = lastPress;
    lastPress = { at: event.point, time: performance.now(), tool };
    const isSoon = before !== null && before.tool === tool && lastPress.time - before.time < same_ms;
    if (isSoon && distance_px(before.at, event.point) < same_px) return;
    const held = aim(map, store, pointer(event), around());
    if (held.closes && tool.role !== "measure") finish(store);
    else if (!held.closes || drawing.corners.peek().at(-1) !== held.at) placeCorner(store, held.at);
  };
  const doubled = (event: MapMouseEvent): void => {
    const tool = drawing.tool.peek();
    if (!tool) return;
    event.preventDefault();
    const last = drawing.corners.peek().at(-1);
    if (last && distance_px(pixelOf(map, last), event.point) < 24 && tool.role !== "measure") finish(store);
  };

  const container = map.getCanvasContainer();
  container.addEventListener("pointerdown", pressed);
  map.on("mousemove", moved);
  map.on("mouseout", left);
  map.on("click", clicked);
  map.on("dblclick", doubled);
  return () => {
    container.removeEventListener("pointerdown", pressed);
    map.off("mousemove", moved);
    map.off("mouseout", left);
    map.off("click", clicked);
    map.off("dblclick", doubled);
  };
}
