import { effect } from "@preact/signals";
import type { Feature } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";
import { colours } from "../../plugin/colours.ts";
import type { Store } from "../store.ts";
import { outgoingOf } from "./outgoing.ts";

const name = "outgoing";
const rowsLayer = "tautrow-rows";

/** Puts a halo under what goes out, as long as the Hand over step is open and nothing is held. Returns what stops it. */
export function showOutgoingOnMap(map: MapLibreMap, store: Store): () => void {
  const outgoing = outgoingOf(store);
  return effect(() => {
    const features = store.drafting.value ? [] : [...outgoing.value];
    const source = map.getSource<GeoJSONSource>(name);
    if (source) void source.setData({ type: "FeatureCollection", features });
    else if (features.length > 0) add(map, features);
  });
}

function add(map: MapLibreMap, features: Feature[]): void {
  map.addSource(name, { type: "geojson", data: { type: "FeatureCollection", features }, tolerance: 0 });
  const below = map.getLayer(rowsLayer) ? rowsLayer : undefined;
  map.addLayer(
    {
      id: `${name}-line`,
      type: "line",
      source: name,
      layout: { "line-cap": "round", "line-join": "round" },
      paint: { "line-color": colours.halo, "line-width": 9, "line-opacity": 0.6 },
    },
    below,
  );
  map.addLayer(
    {
      id: `${name}-point`,
      type: "circle",
      source: name,
      filter: ["==", ["geometry-type"], "Point"],
      paint: {
        "circle-color": colours.halo,
        "circle-radius": ["interpolate", ["linear"], ["zoom"], 16, 2, 20, 9],
      },
    },
    below,
  );
}
