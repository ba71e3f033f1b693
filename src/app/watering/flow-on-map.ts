import { computed, effect } from "@preact/signals";
import type { Feature } from "geojson";
import type { GeoJSONSource, Map as MapLibreMap } from "maplibre-gl";
import { type FlowPiece, flowClasses, flowPieces } from "../../core/drip/flow-pieces.ts";
import type { Plan } from "../../core/plan.ts";
import { colours } from "../../plugin/colours.ts";
import { createPlacing } from "../../plugin/placing.ts";
import { mapFont } from "../map/base-style.ts";
import type { Store } from "../store.ts";
import { flowStyles } from "./flow-styles.ts";

const source = "drip-flow";
const names = `${source}-sets`;
/** Beside its row, so that both are seen. */
const beside_px = 4;
const noFeatures = { type: "FeatureCollection" as const, features: [] };

/** Draws the laterals by how the flow of their emitters lies against the nominal one, while the drip step is open. Returns what stops it. */
export function showFlowOnMap(map: MapLibreMap, store: Store): () => void {
  const features = computed(() => (store.showsFlow.value ? drawn(store.shownPlan.value) : []));
  return effect(() => {
    const known = map.getSource<GeoJSONSource>(source);
    if (known) void known.setData({ ...noFeatures, features: [...features.value] });
    else if (features.value.length > 0) add(map, features.value);
  });
}

function drawn(plan: Plan | null): readonly Feature[] {
  const [watered, rows, frame] = [plan?.watering, plan?.rows?.rows, plan?.ground?.frame];
  if (!watered?.watering || !rows || !frame) return [];
  const { job, watering } = watered;
  const placing = createPlacing(frame);
  const setOf = new Map(watering.sets.flatMap(({ name, laterals }) => laterals.map((lateral) => [lateral, name])));
  const ends = plan?.mainline?.waterEnd ?? [];
  const line = (row: number, from: number, to: number): [number, number][] => {
    const own = rows[row];
    if (own === undefined) return [];
    const [a, b] = ends[row] === "end" ? [own.end, own.start] : [own.start, own.end];
    return [from, to].map((share) => placing.lngLat(a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])));
  };
  const feature = (row: number, from: number, to: number, properties: Feature["properties"]): Feature => ({
    type: "Feature",
    properties,
    geometry: { type: "LineString", coordinates: line(row, from, to) },
  });
  const pieces = flowPieces(job, watering, (row) => rows[row]?.groundLength_m ?? 0);
  return [
    ...pieces.map(({ row, from, to, flowClass }: FlowPiece) => feature(row, from, to, { flow: flowClass })),
    ...[...job.laterals.row].map((row, lateral) => feature(row, 0, 1, { set: `Set ${setOf.get(lateral) ?? ""}` })),
  ];
}

function add(map: MapLibreMap, features: readonly Feature[]): void {
  map.addSource(source, { type: "geojson", data: { ...noFeatures, features: [...features] }, tolerance: 0 });
  for (const flowClass of flowClasses) {
    const { colour, width_px, dashes, gap_px } = flowStyles[flowClass];
    map.addLayer({
      id: `${source}-${flowClass}`,
      type: "line",
      source,
      filter: ["==", ["get", "flow"], flowClass],
      paint: {
        "line-color": colour,
        "line-width": width_px,
        "line-offset": beside_px,
        ...(dashes && { "line-dasharray": [...dashes] }),
        ...(gap_px > 0 && { "line-gap-width": gap_px }),
      },
    });
  }
  map.addLayer({
    id: names,
    type: "symbol",
    source,
    filter: ["has", "set"],
    layout: {
      "symbol-placement": "line-center",
      "text-field": ["get", "set"],
      "text-font": [mapFont],
      "text-size": 12,
      "text-offset": [0, 0.9],
      "text-padding": 24,
    },
    paint: { "text-color": colours.ink, "text-halo-color": colours.paper, "text-halo-width": 1.6 },
  });
}
