import type { Map as MapLibreMap } from "maplibre-gl";
import { showOutgoingOnMap } from "../hand-over/outgoing-on-map.ts";
import type { Store } from "../store.ts";
import { showFlowOnMap } from "../watering/flow-on-map.ts";
import { followWithWaterings } from "../watering/follow-with-waterings.ts";
import { startWateringWorker } from "../watering/start-watering-worker.ts";
import { followWithRoutes } from "./follow-with-routes.ts";
import { showRouteOnMap } from "./route-on-map.ts";
import { startRouteWorker } from "./start-route-worker.ts";

/**
 * The main line and its trench, loaded once a plan is shown: planned, laid beside the page, drawn; and the halo of what is handed over.
 * Returns what stops it.
 */
export function addMainWorks(map: MapLibreMap, store: Store): () => void {
  const stops = [
    followWithRoutes(store, startRouteWorker),
    followWithWaterings(store, startWateringWorker),
    showRouteOnMap(map, store),
    showFlowOnMap(map, store),
    showOutgoingOnMap(map, store),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
