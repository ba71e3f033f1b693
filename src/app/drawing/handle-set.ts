import type { Map as MapLibreMap } from "maplibre-gl";
import { drawnThing } from "../../core/drawing/drawn.ts";
import { courseBetween, placeAt } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { dropDraft } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { type Around, aim } from "./aim.ts";
import { insertCorner, insertCornerMeanwhile, moveCorner, moveCornerMeanwhile, removeCorner } from "./corner-edits.ts";
import { frameNear } from "./drawing-frame.ts";
import { type HandlePlace, handlesOf } from "./handles.ts";
import { pixelOf } from "./pixels.ts";

interface Drag {
  readonly pointer: number;
  readonly key: string;
  readonly handle: HandlePlace;
  readonly around: Around;
  readonly grip: { readonly x: number; readonly y: number };
  readonly start: { readonly x: number; readonly y: number };
  /** Where it goes now; null until the pointer has moved. */
  to: LonLat | null;
}

const keySteps: Readonly<Record<string, number>> = { ArrowUp: 0, ArrowRight: 90, ArrowDown: 180, ArrowLeft: 270 };
const smallStep_m = 0.1;
const largeStep_m = 1;
const leastDrag_px = 3;

/** The corners of the selected thing as buttons on the map: dragged, moved by keys, taken out; middles of sides put a corner in. */
export class HandleSet {
  readonly element = document.createElement("div");
  readonly #map: MapLibreMap;
  readonly #store: Store;
  readonly #buttons = new Map<string, HTMLButtonElement>();
  #handles: ReadonlyMap<string, HandlePlace> = new Map();
  #drag: Drag | null = null;
  #waiting: { x: number; y: number; isTouch: boolean; isFree: boolean } | null = null;
  #frame = 0;
  #stay = 0;

  constructor(map: MapLibreMap, store: Store) {
    this.#map = map;
    this.#store = store;
    this.element.className = "drawing-handles";
    this.element.setAttribute("role", "group");
    this.element.setAttribute("aria-label", "Corners of the selected thing");
  }

  /** Shows the handles of what is selected, where they are now. */
  show(): void {
    const { drawing, project } = this.#store;
    const key = drawing.tool.value ? null : drawing.selected.value;
    const thing = key !== null && project.value ? drawnThing(project.value, key) : null;
    const places = thing ? handlesOf(this.#map, thing, this.#middle) : [];
    this.#handles = new Map(places.map((place) => [`${place.kind}:${place.path}:${place.index}`, place]));
    for (const [id, button] of this.#buttons) {
      // What a pointer holds stays, or the drag would end.
      if (this.#handles.has(id) || button.hasPointerCapture(this.#drag?.pointer ?? -1)) continue;
      button.remove();
      this.#buttons.delete(id);
    }
    for (const [id, place] of this.#handles) this.#put(id, place);
    this.element.hidden = places.length === 0;
  }

  /** Moves the handles along with the map. */
  place(): void {
    for (const [id, { at }] of this.#handles) {
      const button = this.#buttons.get(id);
      const { x, y } = pixelOf(this.#map, at);
      if (button) button.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%)`;
    }
  }

  remove(): void {
    cancelAnimationFrame(this.#frame);
    this.element.remove();
  }

  #put(id: string, place: HandlePlace): void {
    let button = this.#buttons.get(id);
    if (!button) {
      button = document.createElement("button");
      button.type = "button";
      button.className = `drawing-handle is-${place.kind}`;
      button.dataset.handle = id;
      button.addEventListener("pointerdown", this.#press);
      button.addEventListener("pointermove", this.#move);
      button.addEventListener("pointerup", this.#release);
      button.addEventListener("pointercancel", this.#letGo);
      button.addEventListener("keydown", this.#key);
      button.addEventListener("focus", this.#arrive);
      this.#buttons.set(id, button);
      this.element.append(button);
    }
    const isCorner = place.kind === "corner";
    button.setAttribute("aria-label", isCorner ? capital(place.name) : `Put a corner into the ${place.name}`);
    button.title = isCorner
      ? "Drag to move; arrow keys move it by 0.1 m, with Shift by 1 m; Delete takes it out"
      : "Drag or press to put a corner in";
    const { x, y } = pixelOf(this.#map, place.at);
    button.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%)`;
  }

  readonly #middle = (from: LonLat, to: LonLat): LonLat => {
    const frame = frameNear(this.#store, from);
    if (!frame) return from;
    const { length_m, bearing_deg } = courseBetween(frame, from, to);
    return placeAt(frame, from, { length_m: length_m / 2, bearing_deg });
  };

  #of(target: EventTarget | null): HandlePlace | null {
    const id = target instanceof HTMLElement ? target.dataset.handle : undefined;
    return (id !== undefined && this.#handles.get(id)) || null;
  }

  readonly #arrive = (): void => {
    this.#stay++;
  };

  readonly #press = (event: PointerEvent): void => {
    const [handle, key] = [this.#of(event.target), this.#store.drawing.selected.peek()];
    if (!handle || key === null || event.button !== 0 || !(event.target instanceof HTMLElement)) return;
    event.preventDefault();
    event.target.focus({ preventScroll: true });
    event.target.setPointerCapture(event.pointerId);
    const at = pixelOf(this.#map, handle.at);
    const start = { x: event.clientX, y: event.clientY };
    const around = this.#around(key, handle);
    this.#drag = {
      pointer: event.pointerId,
      key,
      handle,
      around,
      start,
      grip: { x: start.x - at.x, y: start.y - at.y },
      to: null,
    };
  };

  /** Corners beside the one that is held, and the one that is not to be snapped to. */
  #around(key: string, { kind, path, index }: HandlePlace): Around {
    const project = this.#store.project.peek();
    const drawn = project ? drawnThing(project, key)?.paths.find((each) => each.path === path) : undefined;
    const corners = drawn?.corners ?? [];
    const last = kind === "corner" ? index - 1 : index;
    const before = (i: number): LonLat | undefined => (drawn?.closed ? corners.at(i) : i < 0 ? undefined : corners[i]);
    return {
      previous: corners.length > 1 ? before(last) : undefined,
      beforePrevious: corners.length > 2 ? before(last - 1) : undefined,
      first: corners.length > 2 ? (corners[index + 1] ?? (drawn?.closed ? corners[0] : undefined)) : undefined,
      except: kind === "corner" ? { key, path, corner: index } : undefined,
    };
  }

  readonly #move = (event: PointerEvent): void => {
    const drag = this.#drag;
    if (!drag || event.pointerId !== drag.pointer) return;
    const moved = Math.hypot(event.clientX - drag.start.x, event.clientY - drag.start.y);
    if (!drag.to && moved < leastDrag_px) return;
    this.#waiting = {
      x: event.clientX - drag.grip.x,
      y: event.clientY - drag.grip.y,
      isTouch: event.pointerType === "touch",
      isFree: event.altKey,
    };
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#follow);
  };

  /** At most once a frame: the newest place of the pointer wins. */
  readonly #follow = (): void => {
    this.#frame = 0;
    const [drag, waiting] = [this.#drag, this.#waiting];
    this.#waiting = null;
    if (!drag || !waiting) return;
    const { isTouch, isFree } = waiting;
    const held = aim(this.#map, this.#store, { pixel: waiting, isTouch, isFree }, drag.around);
    drag.to = held.at;
    this.#store.drawing.held.value = held;
    const { key, handle } = drag;
    if (handle.kind === "corner") {
      moveCornerMeanwhile(this.#store, { key, path: handle.path, corner: handle.index }, held.at);
    } else insertCornerMeanwhile(this.#store, { key, path: handle.path, edge: handle.index }, held.at);
  };

  readonly #release = (event: PointerEvent): void => {
    const drag = this.#drag;
    if (!drag || event.pointerId !== drag.pointer) return;
    if (this.#frame !== 0) {
      cancelAnimationFrame(this.#frame);
      this.#follow();
    }
    this.#drag = null;
    this.#store.drawing.held.value = null;
    const { key, handle, to } = drag;
    if (handle.kind === "middle") {
      insertCorner(this.#store, { key, path: handle.path, edge: handle.index }, to ?? handle.at);
      this.#focus("corner", handle.path, handle.index + 1);
    } else if (to) moveCorner(this.#store, { key, path: handle.path, corner: handle.index }, to);
    // A refused step leaves what was shown meanwhile.
    dropDraft(this.#store);
    this.show();
  };

  readonly #letGo = (): void => {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.#drag = null;
    this.#store.drawing.held.value = null;
    dropDraft(this.#store);
  };

  readonly #key = (event: KeyboardEvent): void => {
    const [handle, key] = [this.#of(event.target), this.#store.drawing.selected.peek()];
    if (!handle || key === null) return;
    if (event.key === "Escape" && this.#drag) this.#letGo();
    else if (handle.kind === "middle") {
      if (event.key !== "Enter" && event.key !== " ") return;
      insertCorner(this.#store, { key, path: handle.path, edge: handle.index }, handle.at);
      this.#focus("corner", handle.path, handle.index + 1);
    } else if (event.key === "Delete" || event.key === "Backspace") {
      removeCorner(this.#store, { key, path: handle.path, corner: handle.index });
      this.#focus("corner", handle.path, Math.max(0, handle.index - 1));
    } else if (!this.#nudge(event, key, handle)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  #nudge(event: KeyboardEvent, key: string, { at, path, index }: HandlePlace): boolean {
    const bearing_deg = keySteps[event.key];
    const frame = frameNear(this.#store, at);
    if (bearing_deg === undefined || !frame) return false;
    const to = placeAt(frame, at, { length_m: event.shiftKey ? largeStep_m : smallStep_m, bearing_deg });
    const ref = { key, path, corner: index };
    moveCorner(this.#store, ref, to, `nudge ${key} ${path} ${index} ${this.#stay}`);
    return true;
  }

  #focus(kind: HandlePlace["kind"], path: number, index: number): void {
    this.show();
    this.#buttons.get(`${kind}:${path}:${index}`)?.focus({ preventScroll: true });
  }
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
