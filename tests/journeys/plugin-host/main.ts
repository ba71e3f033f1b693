import "maplibre-gl/dist/maplibre-gl.css";
import "../../../src/plugin/plugin.css";
import { Map as MapLibreMap, setWorkerUrl } from "maplibre-gl";
import workerUrl from "maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url";
import sample from "../../../samples/acre-with-notch/project.geojson?raw";
import { frameTimes } from "../../../src/app/frame-times.ts";
import { panFrames } from "../../../src/app/pan-frames.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSetting } from "../../../src/core/project/edits.ts";
import { parseProject } from "../../../src/core/project/parse.ts";
import type { Project } from "../../../src/core/project/project.ts";
import { PlanControl } from "../../../src/plugin/index.ts";

/** A stranger's map with a layer of its own, for the journeys; with `?empty` nothing else, for the benchmark. */
export interface Host {
  readonly map: MapLibreMap;
  readonly control: PlanControl;
  /** Milliseconds between frames while the map is kept repainting. */
  frames(count: number): Promise<number[]>;
  /** The same while the map is moved before every frame. */
  panFrames(count: number): Promise<number[]>;
  readonly told: { bearings: number[]; rows: (string | null)[] };
}
declare global {
  interface Window {
    host?: Host;
  }
}

setWorkerUrl(workerUrl);
const query = new URL(location.href).searchParams;
const box = document.getElementById("map");
if (!box) throw new Error("the page has no place for the map");
for (const side of ["width", "height"] as const) {
  const size = query.get(side);
  if (size !== null) box.style[side] = `${size}px`;
}
const map = new MapLibreMap({
  container: box,
  attributionControl: false,
  fadeDuration: 0,
  center: [-121.184, 39.1512],
  zoom: 17,
  style: {
    version: 8,
    sources: { own: { type: "geojson", data: { type: "FeatureCollection", features: [] } } },
    layers: [
      { id: "own-ground", type: "background", paint: { "background-color": "#ffffff" } },
      { id: "own-top", type: "line", source: "own" },
    ],
  },
});
const planner = createPlanner();
const told: Host["told"] = { bearings: [], rows: [] };
const read = parseProject(sample);
if (!read.ok) throw new Error("the sample does not open");
let project: Project = read.value;
const control = new PlanControl({
  prefix: "guest",
  belowLayer: "own-top",
  onBearing: ({ bearing_deg }) => {
    told.bearings.push(bearing_deg);
    const turned = withSetting(project, "rows.bearing", bearing_deg);
    if (!turned.ok) return;
    project = turned.value;
    control.draw(planner.plan(project));
  },
  onSelect: (row) => told.rows.push(row),
});
if (!query.has("empty")) {
  map.addControl(control);
  control.draw(planner.plan(project));
  control.turnBlock(project.blocks[0]?.id ?? null);
  control.showWholePlan(false);
}
window.host = {
  map,
  control,
  told,
  frames: (count) => frameTimes(count, () => map.triggerRepaint()),
  panFrames: (count) => panFrames(map, count),
};
