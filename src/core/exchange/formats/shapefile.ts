import { aboutText, countOf } from "../about.ts";
import { meaningOf } from "../column-meanings.ts";
import { type Chunk, type Format, type HandOverJob, stemOf } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { namedColumns } from "../named-columns.ts";
import { zipped } from "../zip.ts";
import { columnNames } from "./shapefile/column-names.ts";
import { layerSet } from "./shapefile/layer-set.ts";
import { readAhead } from "./shapefile/read-ahead.ts";

/**
 * ESRI shapefile (technical description of July 1998), zipped: a set of files a layer, and a text about them. Findings:
 * `exchange/columns-renamed`, `exchange/texts-cut`, `exchange/heights-partly-known`.
 */
export const shapefile: Format = {
  name: "shapefile",
  word: "Shapefile",
  title: "ESRI shapefile, zipped",
  usedFor: "GIS and survey controllers",
  extension: "zip",
  mediaType: "application/zip",
  holds: layerKinds,
  usual: ["rows", "vines", "posts"],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: (job) => {
    const layers = job.layers.filter(({ count }) => count > 0);
    if (layers.length === 0) return { files: [], findings: [] };
    const name = `${stemOf(layers)}.zip`;
    return {
      files: [{ name, mediaType: "application/zip", content: { kind: "chunks", chunks: () => archive(job) } }],
      findings: readAhead(job),
    };
  },
};

function archive(job: HandOverJob): Iterable<Chunk> {
  const notes: string[] = [];
  const layers = job.layers.filter(({ count }) => count > 0);
  const entries = layers.flatMap((layer) => layerSet(layer, job, notes));
  // The text comes last: by then it is known what had to be cut.
  const readme = { name: "README.txt", chunks: () => [readmeText(job, notes)] };
  return zipped([...entries, readme], job.writtenAt);
}

function readmeText(job: HandOverJob, notes: readonly string[]): string {
  const layers = job.layers.filter(({ count }) => count > 0);
  const wished = [
    ...new Set(layers.flatMap((layer) => namedColumns(layer, job.names).columns.map(({ name }) => name))),
  ];
  return aboutText(job, shapefile, {
    stem: "README",
    files: layers.map((layer) => [`${layer.kind}.shp`, countOf(layer)]),
    columns: shortened(job, wished),
    notes,
  });
}

/** What each column of the tables is called in full, and what it holds. */
function shortened({ layers, names }: HandOverJob, wished: readonly string[]): readonly (readonly [string, string])[] {
  const shortOf = new Map<string, string>();
  for (const layer of layers) {
    const full = namedColumns(layer, names).columns.map(({ name }) => name);
    columnNames(full).forEach((short, i) => {
      shortOf.set(full[i] ?? "", short);
    });
  }
  return wished.map((name) => {
    const short = shortOf.get(name) ?? name;
    return [short, short === name ? meaningOf(name) : `${name}, ${meaningOf(name)}`];
  });
}
