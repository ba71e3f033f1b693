import { computed, effect } from "@preact/signals";
import type { Feature } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";
import type { Project } from "../../core/project/project.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { colours } from "../../plugin/colours.ts";
import type { Store } from "../store.ts";
import { mapFont } from "./base-style.ts";

const name = "pipes-and-heights";

/** Draws the main lines and the spot heights; puts nothing on the map as long as there are none. Returns what stops it. */
export function followWithPipesAndHeights(map: MapLibreMap, store: Store): () => void {
  // Turning the rows leaves all of this as it is.
  const lines = computed(() => store.project.value?.mainLines ?? []);
  const heights = computed(() => store.project.value?.spotHeights ?? []);
  const isRouted = computed(() => store.plan.value?.mainline?.route != null);
  return effect(() => {
    const features = drawn(lines.value, heights.value, isRouted.value, store.units.value);
    const source = map.getSource<GeoJSONSource>(name);
    if (source) void source.setData({ type: "FeatureCollection", features });
    else if (features.length > 0) add(map, features);
  });
}

/** What was drawn is where the pipe runs until a route is laid along it; then it is what the route was asked to keep to. */
function drawn(
  mainLines: Project["mainLines"],
  spotHeights: Project["spotHeights"],
  isRouted: boolean,
  units: UnitSystem,
): Feature[] {
  return [
    ...mainLines.map(
      ({ line }): Feature => ({
        type: "Feature",
        properties: { isWish: isRouted },
        geometry: { type: "LineString", coordinates: line.map(([lon, lat]) => [lon, lat]) },
      }),
    ),
    ...spotHeights.map(
      ({ at, height_m, isOnLine }): Feature => ({
        type: "Feature",
        // A walked track has too many to write each of them.
        properties: { height: isOnLine === true ? "" : formatQuantity("length", height_m, units) },
        geometry: { type: "Point", coordinates: [at[0], at[1]] },
      }),
    ),
  ];
}

function add(map: MapLibreMap, features: Feature[]): void {
  const source = name;
  map.addSource(source, { type: "geojson", data: { type: "FeatureCollection", features }, tolerance: 0 });
  // A double line of clay: two edges with paper between them.
  const line = (id: string, colour: string, width: number, isWish: boolean): void => {
    map.addLayer({
      id: `${name}-${id}`,
      type: "line",
      source,
      filter: ["all", ["==", ["geometry-type"], "LineString"], ["==", ["get", "isWish"], isWish]],
      paint: { "line-color": colour, "line-width": width, ...(isWish && { "line-dasharray": [4, 3] }) },
    });
  };
  line("pipe", colours.clay, 5, false);
  line("pipe-inside", colours.paper, 2, false);
  line("pipe-wish", colours.ink, 1.5, true);
  map.addLayer({
    id: `${name}-spot`,
    type: "symbol",
    source,
    filter: ["==", ["geometry-type"], "Point"],
    layout: {
      "text-field": ["concat", "+ ", ["get", "height"]],
      "text-font": [mapFont],
      "text-size": 13,
      "text-anchor": "left",
      "text-offset": [-0.32, 0],
      "text-allow-overlap": true,
    },
    paint: { "text-color": colours.ink, "text-halo-color": colours.paper, "text-halo-width": 1.6 },
  });
}
