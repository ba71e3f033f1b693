import type { ExpressionSpecification, LayerSpecification, SourceSpecification } from "maplibre-gl";
import { colours } from "./colours.ts";

export const sourceNames = ["ground", "labels", "place"] as const;
export type SourceName = (typeof sourceNames)[number];

const labelZoom = 15.5;

/** An empty source: nothing is simplified, and places are cut to 1.5 cm. */
export const emptySource: SourceSpecification = {
  type: "geojson",
  data: { type: "FeatureCollection", features: [] },
  tolerance: 0,
  maxzoom: 18,
};

const ofKind = (...kinds: string[]): ExpressionSpecification => ["in", ["get", "kind"], ["literal", kinds]];
const isPoint: ExpressionSpecification = ["in", ["geometry-type"], ["literal", ["Point", "MultiPoint"]]];

/** Points and names of the ground, above the ground layer and below the rows, bottom first. */
export function placeLayers(id: (name: string) => string, font: string): LayerSpecification[] {
  const source = id("ground");
  return [
    {
      id: id("places"),
      type: "circle",
      source,
      filter: ["all", isPoint, ofKind("keep-out", "mark", "source")],
      paint: {
        "circle-radius": ["match", ["get", "kind"], "keep-out", 6, 5],
        "circle-color": ["match", ["get", "kind"], "keep-out", colours.clay, colours.parcel],
        "circle-stroke-color": ["match", ["get", "kind"], "keep-out", colours.parcel, colours.ink],
        "circle-stroke-width": 2,
      },
    },
    {
      id: id("names"),
      type: "symbol",
      source,
      minzoom: labelZoom,
      filter: ["all", ["!=", ["get", "name"], ""], ofKind("keep-out", "alley", "mark", "source")],
      layout: {
        "text-field": ["get", "name"],
        "text-font": [font],
        "text-size": 13,
        "text-offset": [0, 1.1],
        "text-anchor": "top",
        "text-max-width": 8,
      },
      paint: { "text-color": colours.quietInk, "text-halo-color": colours.paper, "text-halo-width": 1.6 },
    },
  ];
}

/** A ring around one place. */
export function ringLayer(id: (name: string) => string): LayerSpecification {
  return {
    id: id("place-ring"),
    type: "circle",
    source: id("place"),
    layout: { visibility: "none" },
    paint: {
      "circle-radius": 16,
      "circle-color": "transparent",
      "circle-stroke-color": colours.amber,
      "circle-stroke-width": 4,
    },
  };
}

/** The rows' numbers, unseen until their tiles are there. */
export function numberLayer(id: (name: string) => string, font: string): LayerSpecification {
  return {
    id: id("row-numbers"),
    type: "symbol",
    source: id("labels"),
    minzoom: labelZoom,
    layout: {
      visibility: "none",
      "text-field": ["get", "label"],
      "text-font": [font],
      "text-size": 12,
      "text-anchor": ["get", "anchor"],
      "text-offset": [
        "match",
        ["get", "anchor"],
        ["top", "top-left", "top-right"],
        ["literal", [0, 0.4]],
        ["bottom", "bottom-left", "bottom-right"],
        ["literal", [0, -0.4]],
        "left",
        ["literal", [0.5, 0]],
        ["literal", [-0.5, 0]],
      ],
      "text-padding": 0,
    },
    paint: {
      "text-color": colours.ink,
      "text-halo-color": colours.paper,
      "text-halo-width": 1.6,
      "text-opacity-transition": { duration: 0 },
    },
  };
}
