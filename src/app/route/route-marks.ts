import type { Feature } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";
import type { Plan } from "../../core/plan.ts";
import type { Placing } from "../../plugin/placing.ts";
import { addMarkImages, type MarkName } from "./mark-images.ts";

const name = "route-marks";
const prefix = "route-mark-";

/** Source, low points, high points and crossings of a plan's trench, as marks for the map. */
export function routeMarks({ mainline, trench }: Plan, placing: Placing): Feature[] {
  const route = mainline?.route ?? null;
  if (route === null) return [];
  const mark = (icon: MarkName, x_m: number, y_m: number, turn_deg = 0): Feature => ({
    type: "Feature",
    properties: { icon: prefix + icon, turn: turn_deg },
    geometry: { type: "Point", coordinates: placing.lngLat(x_m, y_m) },
  });
  const crossings = Array.from(route.crossing).flatMap((feature, i): Feature[] => {
    const from = route.upstream[i] ?? -1;
    if (feature < 0 || from < 0) return [];
    const [x1 = 0, y1 = 0] = route.xy.subarray(2 * from, 2 * from + 2);
    const [x2 = 0, y2 = 0] = route.xy.subarray(2 * i, 2 * i + 2);
    // Across the pipe: the picture's strokes stand square to a pipe that runs east.
    const turn_deg = (-Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
    return [mark("crossing", (x1 + x2) / 2, (y1 + y2) / 2, turn_deg)];
  });
  return [
    mark("source", route.xy[0] ?? 0, route.xy[1] ?? 0),
    ...crossings,
    ...(trench?.highs ?? []).map(({ xy, isFitted }) => mark(isFitted ? "high-fitted" : "high", xy[0], xy[1])),
    ...(trench?.lows ?? []).map(({ xy, isFitted }) => mark(isFitted ? "low-fitted" : "low", xy[0], xy[1])),
  ];
}

/** Shows marks on the map; puts nothing there as long as there are none. */
export function showRouteMarks(map: MapLibreMap, features: Feature[]): void {
  const source = map.getSource<GeoJSONSource>(name);
  if (source) {
    // Not only empty: a layer that is there has the whole map masked for it in every frame.
    map.setLayoutProperty(name, "visibility", features.length > 0 ? "visible" : "none");
    void source.setData({ type: "FeatureCollection", features });
  } else if (features.length > 0) {
    addMarkImages(map, prefix);
    map.addSource(name, { type: "geojson", data: { type: "FeatureCollection", features }, tolerance: 0 });
    map.addLayer({
      id: name,
      type: "symbol",
      source: name,
      layout: {
        "icon-image": ["get", "icon"],
        "icon-rotate": ["get", "turn"],
        "icon-rotation-alignment": "map",
        "icon-allow-overlap": true,
        "icon-ignore-placement": true,
      },
    });
  }
}

/** Takes the marks off the map. */
export function removeRouteMarks(map: MapLibreMap): void {
  if (map.getLayer(name)) map.removeLayer(name);
  if (map.getSource(name)) map.removeSource(name);
}
