import { type Signal, signal } from "@preact/signals";
import type { Feature } from "geojson";
import type { Layer, LayerGeometry, Place } from "../../core/exchange/layers/layer.ts";
import type { Store } from "../store.ts";

/** What goes out, for the map; empty while the Hand over step is closed. */
export type Outgoing = Signal<readonly Feature[]>;

const kept = new WeakMap<Store, Outgoing>();

/** What goes out of a page. */
export function outgoingOf(store: Store): Outgoing {
  const known = kept.get(store);
  if (known) return known;
  const outgoing: Outgoing = signal([]);
  kept.set(store, outgoing);
  return outgoing;
}

/** More than these would hold the page, and hide the plan under them. */
const mostFeatures = 5000;

/** The features of layers as the map draws them. A layer that would be too much is left out whole: half of it would mislead. */
export function outgoingFeatures(layers: readonly Layer[]): readonly Feature[] {
  const features: Feature[] = [];
  for (const layer of layers) {
    if (features.length + layer.count > mostFeatures) continue;
    for (const { geometry } of layer.features()) {
      features.push({ type: "Feature", properties: {}, geometry: drawn(geometry) });
    }
  }
  return features;
}

function drawn(geometry: LayerGeometry): Feature["geometry"] {
  switch (geometry.shape) {
    case "point":
      return { type: "Point", coordinates: position(geometry.place) };
    case "line":
      return { type: "LineString", coordinates: geometry.places.map(position) };
    case "area":
      return {
        type: "MultiLineString",
        coordinates: geometry.polygons.flat().map((ring) => [...ring, ...ring.slice(0, 1)].map(position)),
      };
  }
  return geometry satisfies never;
}

function position({ at }: Place): number[] {
  return [at[0], at[1]];
}
