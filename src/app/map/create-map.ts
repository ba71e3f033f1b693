import { effect } from "@preact/signals";
import { type ErrorEvent, Map as MapLibreMap, NavigationControl, ScaleControl, setWorkerUrl } from "maplibre-gl";
import workerUrl from "maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url";
import { PlanControl } from "../../plugin/plan-control.ts";
import { turnRows, turnRowsMeanwhile } from "../commands/turn-rows.ts";
import { followWithCutting } from "../cutting/follow-with-cutting.ts";
import { startCuttingWorker } from "../cutting/start-cutting-worker.ts";
import { imagerySource } from "../imagery/imagery-source.ts";
import { followWithPlantingArea } from "../planting/follow-with-planting-area.ts";
import { startPlantingWorker } from "../planting/start-planting-worker.ts";
import type { Store } from "../store.ts";
import { baseStyle, mapFont } from "./base-style.ts";
import { clickOnMap } from "./click-on-map.ts";
import { createGridLayer } from "./grid-layer.ts";
import { NorthArrow } from "./north-arrow.ts";
import { createPaperFrame } from "./paper-frame.ts";
import { followWithPipesAndHeights } from "./pipes-and-heights.ts";

setWorkerUrl(workerUrl);

const placeZoom = 18.5;
/** Colours of the ground over a picture of it: seen, and seen through. */
const pictureStrength = 0.35;

export interface PlanMap {
  readonly map: MapLibreMap;
  readonly control: PlanControl;
  /** Takes the map away with all that follows the store. */
  remove(): void;
}

/** A map in an element that follows the store: draws its plan, turns its rows, chooses among them. */
export function createMap(container: HTMLElement, store: Store, onGridStep: (step_m: number) => void): PlanMap {
  const map = new MapLibreMap({
    container,
    style: baseStyle(location.href),
    attributionControl: false,
    fadeDuration: 0,
    maxPitch: 0,
    maxZoom: 23,
    pitchWithRotate: false,
    touchPitch: false,
    zoom: 15,
  });
  map.on("error", (event: ErrorEvent & { sourceId?: string }) => {
    // Tiles that someone brings may be missing; the picture's own layer tells.
    if (event.sourceId !== imagerySource) console.error(event.error);
  });
  const scale = new ScaleControl({ maxWidth: 120 });
  let pressedRow: string | null = null;
  const control = new PlanControl({
    font: mapFont,
    onBearing: ({ bearing_deg, phase, by }) => {
      if (phase === "moving") turnRowsMeanwhile(store, bearing_deg);
      else turnRows(store, bearing_deg, by === "key" ? "turned by keys" : undefined);
    },
    onSelect: (row) => {
      pressedRow = row;
    },
  });
  const stops: (() => void)[] = [];
  // Before the control's own layers, so that the grid lies under them.
  map.on("style.load", () => {
    const showGrid = createGridLayer(map, onGridStep);
    const paperFrame = createPaperFrame(map);
    stops.push(effect(() => showGrid(store.plan.value?.ground?.frame ?? paperFrame())));
    map.on("moveend", () => {
      if (!store.plan.peek()?.ground) showGrid(paperFrame());
    });
  });
  // Once the first picture stands: it does not wait for the planting area.
  map.once("load", () => {
    stops.push(followWithPipesAndHeights(map, store));
    void import("./row-one-handle.ts").then(({ addRowOneHandle }) => stops.push(addRowOneHandle(map, store)));
    void import("../../core/materials/materials.ts").then(({ materials }) => {
      store.materialsOf.value = materials;
    });
    void import("../route/main-works.ts").then(({ addMainWorks }) => stops.push(addMainWorks(map, store)));
    stops.push(followWithPlantingArea(store, startPlantingWorker));
    stops.push(followWithCutting(store, startCuttingWorker));
  });
  map.addControl(new NavigationControl({ showCompass: false }), "top-right");
  map.addControl(new NorthArrow());
  map.addControl(control, "top-right");
  map.addControl(scale, "bottom-right");
  // After the control, which has then said which row was pressed.
  map.on("click", ({ point }) => {
    const row = pressedRow;
    pressedRow = null;
    void clickOnMap(map, store, point, row);
  });
  stops.push(
    effect(() => {
      if (store.plan.value) control.draw(store.plan.value);
    }),
    effect(() => control.turnBlock(store.blockId.value)),
    effect(() => control.setGroundStrength(store.drawing.isPictured.value ? pictureStrength : 1)),
    effect(() => control.select(store.row.value)),
    effect(() => {
      if (store.repaint.value > 0) map.triggerRepaint();
    }),
    effect(() => scale.setUnit(store.units.value === "us" ? "imperial" : "metric")),
    effect(() => {
      // Only a newly opened project moves the map, and the first ground that is brought in.
      if (store.opened.value + store.wholeAsked.value > 0) control.showWholePlan(false);
    }),
    effect(() => {
      const at = store.finding.value?.at ?? null;
      control.markPlace(at);
      if (at) map.flyTo({ center: [at[0], at[1]], zoom: Math.max(map.getZoom(), placeZoom), duration: 900 });
    }),
  );
  // Only there while the page is measured.
  if (window.tautrowBench) window.tautrowBench.map = map;
  return {
    map,
    control,
    remove: () => {
      for (const stop of stops) stop();
      map.remove();
    },
  };
}
