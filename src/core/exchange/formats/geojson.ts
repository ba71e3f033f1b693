import type { Feature } from "geojson";
import { createBounds } from "../bounds.ts";
import { featureGeometry } from "../feature-geometry.ts";
import { type Format, featuresAChunk, type HandOverJob, type OutFile } from "../format.ts";
import { type Layer, type LayerFeature, layerKinds } from "../layers/layer.ts";

const mediaType = "application/geo+json";

/**
 * GeoJSON (RFC 7946): a feature a line, so that two plans can be compared line by line; 8 decimals; the box around all behind the features, for it
 * is not known before. A file a layer, or all in one.
 */
export const geoJson: Format = {
  name: "geojson",
  title: "GeoJSON (RFC 7946)",
  usedFor: "any GIS, web maps, our own document",
  extension: "geojson",
  mediaType,
  holds: layerKinds,
  choices: ["naming", "heights", "baseline", "together"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: (job) => ({ files: filesOf(job), findings: [] }),
};

function filesOf(job: HandOverJob): readonly OutFile[] {
  const { layers, choice } = job;
  if (choice.together && layers.length > 1) return [fileOf(job, "plan", layers)];
  return layers.map((layer) => fileOf(job, layer.kind, [layer]));
}

function fileOf(job: HandOverJob, stem: string, layers: readonly Layer[]): OutFile {
  return {
    name: `${stem}.geojson`,
    mediaType,
    content: { kind: "chunks", chunks: () => collection(job, layers) },
  };
}

function* collection(job: HandOverJob, layers: readonly Layer[]): Generator<string> {
  const bounds = createBounds();
  let lines: string[] = [];
  let before = `{"type":"FeatureCollection","features":[`;
  let after = "]";
  for (const layer of layers) {
    for (const feature of layer.features()) {
      const told = featureOf(job, layer, feature);
      bounds.add(told.geometry);
      lines.push(JSON.stringify(told));
      if (lines.length < featuresAChunk) continue;
      yield `${before}\n${lines.join(",\n")}`;
      lines = [];
      before = ",";
      after = "\n]";
    }
  }
  yield lines.length === 0 ? `${before === "," ? "" : before}${after}` : `${before}\n${lines.join(",\n")}\n]`;
  const box = bounds.box();
  yield box === null ? "}\n" : `,"bbox":${JSON.stringify(box)}}\n`;
}

/** A name stands among the properties where it is not the id: what has a column for it keeps what it is called in the plan. */
function featureOf({ names }: HandOverJob, { columns }: Layer, feature: LayerFeature): Feature {
  const name = names.of(feature);
  const properties: [string, string | number | boolean | null][] = columns.map((column, i) => [
    column.name,
    feature.values[i] ?? null,
  ]);
  if (name !== feature.id && !columns.some((column) => column.name === "name")) properties.unshift(["name", name]);
  return {
    type: "Feature",
    id: feature.id,
    geometry: featureGeometry(feature.geometry),
    properties: Object.fromEntries(properties),
  };
}
