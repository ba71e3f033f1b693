import "./drawing.css";
import { effect } from "@preact/signals";
import { LngLatBounds, type Map as MapLibreMap } from "maplibre-gl";
import { useEffect, useRef } from "preact/hooks";
import { drawnThing } from "../../core/drawing/drawn.ts";
import type { Store } from "../store.ts";
import { useStore } from "../store-context.ts";
import { FindPlace } from "./find-place.tsx";
import { HandleSet } from "./handle-set.ts";
import { Overlay } from "./overlay.ts";
import { Palette } from "./palette.tsx";
import { pixelOf } from "./pixels.ts";
import { putAside, takeUpAgain } from "./sketch.ts";
import { SketchBar } from "./sketch-bar.tsx";
import { followKeys } from "./sketch-keys.ts";
import { followPointer } from "./sketch-pointer.ts";

/** Everything for drawing and bending that lies above the map; loaded when it is first wanted. */
export function Desk({ map }: { readonly map: MapLibreMap }) {
  const store = useStore();
  useEffect(() => layOut(map, store), [map, store]);
  return (
    <>
      <Palette />
      <FindPlace />
      <SketchBar />
      <Aside />
      <p class="unseen" role="status" aria-live="polite">
        {store.drawing.said}
      </p>
    </>
  );
}

/** A drawing that was given up is not lost at once. */
function Aside() {
  const store = useStore();
  const { drawing } = store;
  const aside = drawing.putAside.value;
  const isShown = aside !== null && drawing.tool.value === null;
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isShown && document.activeElement === document.body) box.current?.querySelector("button")?.focus();
  }, [isShown]);
  if (!aside || drawing.tool.value) return null;
  const count = aside.corners.length;
  return (
    <div class="put-aside" role="status" ref={box}>
      <span>
        {aside.tool.label} with {count} {count === 1 ? "corner" : "corners"} put aside.
      </span>
      <button type="button" onClick={() => takeUpAgain(store)}>
        Go on drawing it
      </button>
      <button
        type="button"
        class="quiet-button"
        onClick={() => {
          drawing.putAside.value = null;
        }}
      >
        Forget it
      </button>
    </div>
  );
}

function layOut(map: MapLibreMap, store: Store): () => void {
  const { drawing } = store;
  const overlay = new Overlay(map, store);
  const handles = new HandleSet(map, store);
  map.getContainer().append(overlay.element, handles.element);
  const follow = (): void => {
    overlay.paint();
    handles.place();
  };
  // Which middles have room changes with the scale.
  const settle = (): void => handles.show();
  map.on("move", follow);
  map.on("resize", follow);
  map.on("moveend", settle);
  let opened = store.opened.peek();
  const stops = [
    effect(() => overlay.paint()),
    effect(() => handles.show()),
    effect(() => {
      const isDrawing = drawing.tool.value !== null;
      map.getContainer().classList.toggle("is-drawing", isDrawing);
      if (isDrawing) map.doubleClickZoom.disable();
      else {
        map.doubleClickZoom.enable();
        map.getCanvas().style.cursor = "";
      }
    }),
    effect(() => {
      // Another project has nothing of what was drawn for this one.
      if (store.opened.value === opened) return;
      opened = store.opened.value;
      putAside(store);
      drawing.putAside.value = null;
      drawing.selected.value = null;
      drawing.position.value = null;
    }),
    effect(() => {
      // What an undo takes away is not selected any more.
      const [key, project] = [drawing.selected.value, store.project.value];
      if (key !== null && project && !drawnThing(project, key)) drawing.selected.value = null;
    }),
    effect(() => lookAt(map, store)),
    effect(() => lookAtFirst(map, store)),
    followPointer(map, store),
    followKeys(store),
  ];
  return () => {
    for (const stop of stops) stop();
    map.off("move", follow);
    map.off("resize", follow);
    map.off("moveend", settle);
    overlay.element.remove();
    handles.remove();
  };
}

const closeZoom = 17.5;
/** A first thing smaller than this on the screen is looked at from nearer. */
const least_px = 280;
const margin_px = 60;

/** Brings the first thing of a project into view when it is out of it, or so far out that nothing can be seen of it. */
function lookAtFirst(map: MapLibreMap, store: Store): void {
  const { project, drawing } = store;
  const key = drawing.selected.value;
  const shown = project.peek();
  if (key === null || !shown || shown.document.features.length !== 1) return;
  const corners = drawnThing(shown, key)?.paths.flatMap((path) => path.corners) ?? [];
  if (corners.length < 3) return;
  const pixels = corners.map((at) => pixelOf(map, at));
  const [xs, ys] = [pixels.map(({ x }) => x), pixels.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const { clientWidth, clientHeight } = map.getContainer();
  const isSeen = left > 0 && top > 0 && right < clientWidth && bottom < clientHeight;
  if (isSeen && Math.max(right - left, bottom - top) >= least_px) return;
  const bounds = new LngLatBounds();
  for (const at of corners) bounds.extend([at[0], at[1]]);
  map.fitBounds(bounds, { padding: 72, maxZoom: 20, animate: false });
}

/** Moves the map to a place that is out of sight, and nearer when it is far out. */
function lookAt(map: MapLibreMap, store: Store): void {
  const at = store.drawing.lookAt.value;
  if (!at) return;
  const { x, y } = pixelOf(map, at);
  const { clientWidth, clientHeight } = map.getContainer();
  const isSeen = x > margin_px && y > margin_px && x < clientWidth - margin_px && y < clientHeight - margin_px;
  const isNear = map.getZoom() >= closeZoom - 1;
  if (isSeen && isNear) return;
  map.jumpTo({ center: [at[0], at[1]], zoom: isNear ? map.getZoom() : closeZoom });
}
