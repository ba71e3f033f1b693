import type { HandOver } from "../../core/exchange/hand-over.ts";
import type { Layer, LayerFeature, LayerGeometry, Place, Value } from "../../core/exchange/layers/layer.ts";
import type { List } from "../../core/exchange/lists/list.ts";
import { thingNames } from "./things.ts";

/** The first of what goes out, as a table; a person sees names and places before anything is written. */
export interface PreviewTable {
  readonly name: string;
  readonly count: number;
  readonly heads: readonly string[];
  readonly lines: readonly (readonly string[])[];
}

/** So many lines are enough to see that it is right. */
const mostLines = 4;

/** A table for every layer and list that goes out. */
export function previewTables({ layers, lists, names, system }: HandOver): readonly PreviewTable[] {
  const decimals = system.unit === "deg" ? 8 : 3;
  const [x, y] = system.unit === "deg" ? ["longitude", "latitude"] : ["easting", "northing"];
  const unit = system.unit === "deg" ? "°" : unitWords[system.unit];
  const cellsOf = ({ at, height_m }: Place): readonly string[] => [
    ...system.fromLonLat(at[0], at[1]).map((number) => number.toFixed(decimals)),
    height_m === null ? "" : height_m.toFixed(3),
  ];
  const table = (layer: Layer): PreviewTable => {
    const features = firstOf(layer.features(), mostLines);
    const hasHeights = features.some(({ geometry }) => firstPlace(geometry)?.height_m != null);
    const placeHeads = [`${x}, ${unit}`, `${y}, ${unit}`, ...(hasHeights ? ["height, m"] : [])];
    return {
      name: thingNames[layer.kind],
      count: layer.count,
      heads: [
        "name",
        ...placeHeads.map((head) => (layer.shape === "point" ? head : `first ${head}`)),
        ...layer.columns.map(({ name }) => name),
      ],
      lines: features.map((feature) => lineOf(feature, names.of(feature), placeHeads.length)),
    };
  };
  const lineOf = (feature: LayerFeature, name: string, places: number): readonly string[] => {
    const place = firstPlace(feature.geometry);
    return [name, ...(place ? cellsOf(place) : ["", "", ""]).slice(0, places), ...feature.values.map(cellText)];
  };
  return [...layers.map(table), ...lists.map(listTable)];
}

function listTable({ kind, heads, lines }: List): PreviewTable {
  return {
    name: thingNames[kind],
    count: lines.length,
    heads,
    lines: lines.slice(0, mostLines).map((cells) => cells.map(cellText)),
  };
}

const unitWords = { m: "m", ft: "ft", "us-ft": "US survey ft" } as const;

function cellText(value: Value): string {
  if (value === null) return "";
  return value === true ? "yes" : String(value);
}

function firstPlace(geometry: LayerGeometry): Place | undefined {
  switch (geometry.shape) {
    case "point":
      return geometry.place;
    case "line":
      return geometry.places[0];
    case "area":
      return geometry.polygons[0]?.[0]?.[0];
  }
  return geometry satisfies never;
}

function firstOf<T>(all: Iterable<T>, most: number): readonly T[] {
  const first: T[] = [];
  for (const each of all) {
    if (first.length >= most) break;
    first.push(each);
  }
  return first;
}
