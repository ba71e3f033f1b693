import type { Geometry } from "geojson";
import { createBounds } from "../bounds.ts";
import { featureGeometry } from "../feature-geometry.ts";
import { type Format, featuresAChunk, type HandOverJob, type OutFile } from "../format.ts";
import { type Layer, type LayerFeature, layerKinds, type Value } from "../layers/layer.ts";

const mediaType = "application/geo+json";

/**
 * GeoJSON (RFC 7946): a feature a line, so that two plans can be compared line by line; 8 decimals; the box around all behind the features, for it
 * is not known before. A file a layer, or all in one.
 */
export const geoJson: Format = {
  name: "geojson",
  word: "GeoJSON",
  title: "GeoJSON (RFC 7946)",
  usedFor: "any GIS, web maps, our own document",
  extension: "geojson",
  mediaType,
  holds: layerKinds,
  usual: ["rows"],
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
    const written = featureWriter(job, layer);
    for (const feature of layer.features()) {
      const geometry = featureGeometry(feature.geometry);
      bounds.add(geometry);
      lines.push(written(feature, geometry));
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

/**
 * A feature as text, put together piece by piece: a quarter of a million are written so in half the time that building them as objects takes. A
 * name stands among the properties where it is not the id: what has a column for it keeps what it is called in the plan.
 */
function featureWriter(
  { names }: HandOverJob,
  { columns }: Layer,
): (feature: LayerFeature, geometry: Geometry) => string {
  const heads = columns.map(({ name }) => `${JSON.stringify(name)}:`);
  const isNamed = columns.some(({ name }) => name === "name");
  return (feature, geometry) => {
    const { id, values } = feature;
    const name = isNamed ? id : names.of(feature);
    const properties = heads.map((head, i) => `${head}${valueText(values[i] ?? null)}`);
    if (name !== id) properties.unshift(`"name":${JSON.stringify(name)}`);
    const shape =
      geometry.type === "Point"
        ? `{"type":"Point","coordinates":[${geometry.coordinates.join(",")}]}`
        : JSON.stringify(geometry);
    return `{"type":"Feature","id":${JSON.stringify(id)},"geometry":${shape},"properties":{${properties.join(",")}}}`;
  };
}

function valueText(value: Value): string {
  return typeof value === "string" ? JSON.stringify(value) : String(value);
}
