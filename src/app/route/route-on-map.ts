import "./route.css";
import { computed, effect } from "@preact/signals";
import type { Map as MapLibreMap, MapMouseEvent } from "maplibre-gl";
import type { Plan } from "../../core/plan.ts";
import { lonLat } from "../../core/plane/coordinate.ts";
import { branchesOf } from "../../core/trench/branches.ts";
import { placeOnTrench, pointOnTrench } from "../../core/trench/place-on-trench.ts";
import { createPlacing } from "../../plugin/placing.ts";
import type { Store } from "../store.ts";
import { routeDrawing } from "./route-drawing.ts";
import { RouteLayer } from "./route-layer.ts";
import { removeRouteMarks, routeMarks, showRouteMarks } from "./route-marks.ts";

const layerId = "route";
const rowsLayer = "tautrow-rows";
const reach_px = 11;

/** Draws the trench of the plan under its rows, and its marks over them; pointing at it points at its place. Returns what stops it. */
export function showRouteOnMap(map: MapLibreMap, store: Store): () => void {
  const layer = new RouteLayer(layerId);
  map.addLayer(layer, map.getLayer(rowsLayer) ? rowsLayer : undefined);
  const shown = computed(() => drawn(store.plan.value));
  const mark = createMark(map);
  const stops = [
    effect(() => layer.show(shown.value?.drawing ?? null)),
    effect(() => showRouteMarks(map, shown.value?.marks ?? [])),
    effect(() => layer.point(store.trenchPlace.value?.branch ?? null)),
    effect(() => {
      const [at, place] = [shown.value, store.trenchPlace.value];
      const point = at && place ? pointOnTrench(at.route, at.branches, place) : null;
      mark.show(at && point ? at.placing.lngLat(point[0], point[1]) : null);
    }),
    noteOnMap(map, store),
    followPointer(map, store, (event) => {
      const at = shown.peek();
      if (!at) return null;
      const here = at.placing.frame.toPlane(lonLat(event.lngLat.lng, event.lngLat.lat));
      const beside = map.unproject([event.point.x + reach_px, event.point.y]);
      const edge = at.placing.frame.toPlane(lonLat(beside.lng, beside.lat));
      return placeOnTrench(at.route, at.branches, here, Math.hypot(edge[0] - here[0], edge[1] - here[1]));
    }),
  ];
  return () => {
    for (const stop of stops) stop();
    mark.remove();
    removeRouteMarks(map);
    if (map.getLayer(layerId)) map.removeLayer(layerId);
  };
}

function drawn(plan: Plan | null) {
  const [route, frame] = [plan?.mainline?.route ?? null, plan?.ground?.frame ?? null];
  if (plan === null || route === null || frame === null) return null;
  const branches = plan.trench?.branches ?? branchesOf(route);
  const placing = createPlacing(frame);
  return {
    route,
    branches,
    placing,
    drawing: routeDrawing(route, branches, placing),
    marks: routeMarks(plan, placing),
  };
}

/** A mark that stays at its place while the map moves under it. */
function createMark(map: MapLibreMap) {
  const element = document.createElement("div");
  element.className = "trench-place";
  element.setAttribute("aria-hidden", "true");
  element.hidden = true;
  map.getContainer().append(element);
  let at: readonly [number, number] | null = null;
  const place = (): void => {
    if (at === null) return;
    const { x, y } = map.project([at[0], at[1]]);
    element.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%)`;
  };
  const show = (next: readonly [number, number] | null): void => {
    at = next;
    element.hidden = at === null;
    place();
  };
  map.on("move", place);
  map.on("resize", place);
  return {
    show,
    remove: () => {
      map.off("move", place);
      map.off("resize", place);
      element.remove();
    },
  };
}

/** Says on the map that the route waits; it is heard from the step's line. */
function noteOnMap(map: MapLibreMap, store: Store): () => void {
  const note = document.createElement("p");
  note.className = "route-note";
  note.setAttribute("aria-hidden", "true");
  note.textContent = "The route follows when you let go.";
  map.getContainer().append(note);
  const stop = effect(() => {
    note.hidden = store.routeState.value !== "waiting";
  });
  return () => {
    stop();
    note.remove();
  };
}

type PlaceAt = (event: MapMouseEvent) => { readonly branch: number; readonly station_m: number } | null;

/** A pointer over the trench points at its place until it leaves; a click or a tap until the next one. */
function followPointer(map: MapLibreMap, store: Store, placeAt: PlaceAt): () => void {
  let isOurs = false;
  let isHeld = false;
  const isFree = (): boolean => store.drawing.tool.peek() === null && !store.drafting.peek();
  const move = (event: MapMouseEvent): void => {
    if (!isFree()) return;
    const place = placeAt(event);
    if (place !== null) map.getCanvas().style.cursor = "pointer";
    if (isHeld || (place === null && !isOurs)) return;
    isOurs = place !== null;
    store.trenchPlace.value = place;
  };
  const leave = (): void => {
    if (!isOurs || isHeld) return;
    isOurs = false;
    store.trenchPlace.value = null;
  };
  const click = (event: MapMouseEvent): void => {
    if (!isFree()) return;
    const place = placeAt(event);
    isHeld = place !== null;
    isOurs = isHeld;
    store.trenchPlace.value = place;
  };
  map.on("mousemove", move);
  map.on("mouseout", leave);
  map.on("click", click);
  return () => {
    map.off("mousemove", move);
    map.off("mouseout", leave);
    map.off("click", click);
  };
}
