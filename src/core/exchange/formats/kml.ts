import { type Format, type HandOverJob, type OutFile, stemOf } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { kmlChunks } from "./kml/kml-chunks.ts";

const mediaType = "application/vnd.google-earth.kml+xml";

/** KML 2.2: a folder a layer, a style a layer, the columns as typed data of each place. */
export const kml: Format = {
  name: "kml",
  word: "KML",
  title: "KML 2.2",
  usedFor: "phone and office maps",
  extension: "kml",
  mediaType,
  holds: layerKinds,
  usual: ["parcels", "blocks", "rows", "route"],
  choices: ["naming", "heights"],
  naming: { one: "{kind} {row} {number}", several: "{kind} {block} {row} {number}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: (job) => ({ files: filesOf(job), findings: [] }),
};

function filesOf(job: HandOverJob): readonly OutFile[] {
  if (job.layers.length === 0) return [];
  const name = `${stemOf(job.layers)}.kml`;
  return [{ name, mediaType, content: { kind: "chunks", chunks: () => kmlChunks(job, kml, name) } }];
}
