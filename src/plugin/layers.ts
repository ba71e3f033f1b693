import type { ExpressionSpecification, LayerSpecification, SourceSpecification } from "maplibre-gl";
import { colours } from "./colours.ts";

export const sourceNames = ["ground", "rows", "labels", "vines", "posts", "place"] as const;
export type SourceName = (typeof sourceNames)[number];

/** Zoom from which vines and posts are drawn one by one. */
export const vineZoom = 19;
export const postZoom = 18.8;
const labelZoom = 15.5;

/** An empty source: nothing is simplified, and rows are cut to 1.5 cm. */
export function sourceSpecification(name: SourceName): SourceSpecification {
  return {
    type: "geojson",
    data: { type: "FeatureCollection", features: [] },
    tolerance: 0,
    maxzoom: name === "vines" || name === "posts" ? 22 : 18,
  };
}

export interface PlanLayer {
  readonly specification: LayerSpecification;
  /** Paint property that keeps the layer unseen while its tiles load, for a layer that gives way to the live rows; else null. */
  readonly opacity: "line-opacity" | "circle-opacity" | "icon-opacity" | "text-opacity" | null;
}

const ofKind = (...kinds: string[]): ExpressionSpecification => ["in", ["get", "kind"], ["literal", kinds]];
const isPoint: ExpressionSpecification = ["in", ["geometry-type"], ["literal", ["Point", "MultiPoint"]]];

/** Points and names of the ground, above the ground layer and below the live layer, bottom first. */
export function groundLayers(id: (name: string) => string, font: string): PlanLayer[] {
  return placeLayers(id, font).map((specification) => ({ specification, opacity: null }));
}

function placeLayers(id: (name: string) => string, font: string): LayerSpecification[] {
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

/** Layers above the live layer, bottom first. */
export function rowLayers(id: (name: string) => string, font: string, squareImage: string): PlanLayer[] {
  return [
    {
      specification: {
        id: id("row-lines"),
        type: "line",
        source: id("rows"),
        filter: ["==", ["get", "kind"], "row"],
        paint: { "line-color": colours.ink, "line-width": 1.6, "line-opacity-transition": { duration: 0 } },
      },
      opacity: "line-opacity",
    },
    {
      specification: {
        id: id("row-ticks"),
        type: "line",
        source: id("rows"),
        filter: ["==", ["get", "kind"], "ticks"],
        paint: { "line-color": colours.ink, "line-width": 1.6, "line-opacity-transition": { duration: 0 } },
      },
      opacity: "line-opacity",
    },
    {
      specification: {
        id: id("vine-dots"),
        type: "circle",
        source: id("vines"),
        minzoom: vineZoom,
        paint: {
          "circle-radius": ["interpolate", ["exponential", 2], ["zoom"], vineZoom, 2, 22, 14],
          "circle-color": colours.vine,
          "circle-opacity-transition": { duration: 0 },
        },
      },
      opacity: "circle-opacity",
    },
    {
      specification: {
        id: id("post-squares"),
        type: "symbol",
        source: id("posts"),
        minzoom: postZoom,
        layout: {
          "icon-image": squareImage,
          "icon-size": ["interpolate", ["linear"], ["zoom"], postZoom, 0.4, 21, 0.8],
          "icon-allow-overlap": true,
          "icon-ignore-placement": true,
        },
        paint: { "icon-opacity-transition": { duration: 0 } },
      },
      opacity: "icon-opacity",
    },
    labelLayer(id, font),
    {
      specification: {
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
      },
      opacity: null,
    },
  ];
}

function labelLayer(id: (name: string) => string, font: string): PlanLayer {
  return {
    specification: {
      id: id("row-numbers"),
      type: "symbol",
      source: id("labels"),
      minzoom: labelZoom,
      layout: {
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
    },
    opacity: "text-opacity",
  };
}
