import { effect } from "@preact/signals";
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
  return effect(() => {
    const { project, units } = store;
    const features = project.value ? drawn(project.value, units.value) : [];
    const source = map.getSource<GeoJSONSource>(name);
    if (source) void source.setData({ type: "FeatureCollection", features });
    else if (features.length > 0) add(map, features);
  });
}

function drawn({ mainLines, spotHeights }: Project, units: UnitSystem): Feature[] {
  return [
    ...mainLines.map(
      ({ line }): Feature => ({
        type: "Feature",
        properties: {},
        geometry: { type: "LineString", coordinates: line.map(([lon, lat]) => [lon, lat]) },
      }),
    ),
    ...spotHeights.map(
      ({ at, height_m }): Feature => ({
        type: "Feature",
        properties: { height: formatQuantity("length", height_m, units) },
        geometry: { type: "Point", coordinates: [at[0], at[1]] },
      }),
    ),
  ];
}

function add(map: MapLibreMap, features: Feature[]): void {
  const source = name;
  map.addSource(source, { type: "geojson", data: { type: "FeatureCollection", features }, tolerance: 0 });
  // A double line of clay: two edges with paper between them.
  const line = (id: string, colour: string, width: number): void => {
    map.addLayer({
      id: `${name}-${id}`,
      type: "line",
      source,
      filter: ["==", ["geometry-type"], "LineString"],
      paint: { "line-color": colour, "line-width": width },
    });
  };
  line("pipe", colours.clay, 5);
  line("pipe-inside", colours.paper, 2);
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
