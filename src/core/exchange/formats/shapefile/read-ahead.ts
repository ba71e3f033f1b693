import { strToU8 } from "fflate";
import type { Finding } from "../../../finding.ts";
import type { HandOverJob } from "../../format.ts";
import type { Layer, LayerFeature, Place } from "../../layers/layer.ts";
import { namedColumns } from "../../named-columns.ts";
import { columnNames } from "./column-names.ts";
import { longestText_bytes } from "./dbase.ts";
import { columnsRenamed, heightsPartlyKnown, textsCut } from "./findings.ts";

/** Features of a layer that are looked at before anything is written: a few milliseconds. What comes later is told in the archive's text. */
const features = 5000;

/** What a shapefile cannot carry of these layers, as far as it shows before they are written. */
export function readAhead({ layers, names }: HandOverJob): readonly Finding[] {
  const renamed = new Set<string>();
  const partly: string[] = [];
  let cut = 0;
  let example = "";
  for (const layer of layers) {
    const { columns, valuesOf } = namedColumns(layer, names);
    const short = columnNames(columns.map(({ name }) => name));
    columns.forEach(({ name }, i) => {
      if (name !== short[i]) renamed.add(`${name} is ${short[i]}`);
    });
    const known = new Set<boolean>();
    for (const feature of firstOf(layer)) {
      for (const { height_m } of placesOf(feature)) known.add(height_m !== null);
      for (const value of valuesOf(feature)) {
        if (typeof value !== "string" || 3 * value.length <= longestText_bytes) continue;
        if (strToU8(value).length <= longestText_bytes) continue;
        cut++;
        example ||= feature.id;
      }
    }
    if (known.size > 1) partly.push(layer.kind);
  }
  const isAll = layers.every(({ count }) => count <= features);
  return [
    ...(renamed.size > 0 ? [columnsRenamed([...renamed])] : []),
    ...(cut > 0 ? [textsCut(cut, example.slice(0, 60), isAll)] : []),
    ...(partly.length > 0 ? [heightsPartlyKnown(partly, "they go out without heights")] : []),
  ];
}

function* firstOf(layer: Layer): Generator<LayerFeature> {
  let left = features;
  for (const feature of layer.features()) {
    if (left-- === 0) return;
    yield feature;
  }
}

function placesOf({ geometry }: LayerFeature): readonly Place[] {
  switch (geometry.shape) {
    case "point":
      return [geometry.place];
    case "line":
      return geometry.places;
    case "area":
      return geometry.polygons.flat(2);
  }
  return geometry satisfies never;
}
