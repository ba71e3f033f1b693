import { aboutParts, countOf } from "../about.ts";
import { type Format, type HandOverJob, type OutFile, stemOf } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { drawing } from "./dxf/drawing.ts";

/**
 * DXF R12, which every CAD program reads: a layer a kind of thing, one more for its names, and a layer of text that says what the numbers mean.
 * What a drawing has no place for (columns) stands in extended entity data under the application name TAUTROW.
 */
export const dxf: Format = {
  name: "dxf",
  word: "DXF",
  title: "DXF R12",
  usedFor: "CAD and layout",
  extension: "dxf",
  mediaType: "image/vnd.dxf",
  holds: layerKinds,
  usual: ["parcels", "blocks", "rows", "posts", "route"],
  choices: ["system", "unit", "naming", "heights"],
  naming: { one: "{id}", several: "{id}" },
  // R12 takes strings of 255 bytes.
  nameLength: 120,
  letters: "any",
  statesItself: true,
  places: "chosen, no degrees",
  write: (job) => ({ files: job.layers.length === 0 ? [] : [drawingFile(job)], findings: [] }),
};

/** The unit stands in the name: a drawing in feet that is read in metres is found out before it is staked. */
function drawingFile(job: HandOverJob): OutFile {
  const stem = stemOf(job.layers);
  const name = `${stem}-${job.system.unit}.dxf`;
  const about = aboutParts(job, dxf, {
    stem,
    files: [[name, `${job.layers.map(countOf).join(", ")}; every kind on a layer of its own, names on a second one`]],
    columns: [],
    notes: ["Columns of each thing: extended entity data, application TAUTROW."],
  });
  return { name, mediaType: dxf.mediaType, content: { kind: "chunks", chunks: () => drawing(job, about) } };
}
