import type { Map as MapLibreMap } from "maplibre-gl";
import type { Store } from "../store.ts";
import { followWithRoutes } from "./follow-with-routes.ts";
import { showRouteOnMap } from "./route-on-map.ts";
import { startRouteWorker } from "./start-route-worker.ts";

/** The main line and its trench, loaded once a plan is shown: planned, laid beside the page, drawn. Returns what stops it. */
export function addMainWorks(map: MapLibreMap, store: Store): () => void {
  const stops = [followWithRoutes(store, startRouteWorker), showRouteOnMap(map, store)];
  return () => {
    for (const stop of stops) stop();
  };
}
