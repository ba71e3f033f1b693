import type { Format, HandOverJob, OutFile } from "../format.ts";
import { zipped } from "../zip.ts";
import { columnsLeftOut } from "./iso-task-data/findings.ts";
import { taskData } from "./iso-task-data/task-data.ts";

/**
 * ISO 11783-10 task data, version 4.3: a field a parcel with its boundary, blocks as zones of it, a guidance line a row. Longitude and latitude on
 * WGS 84 with 9 decimals, its most. Findings: `exchange/columns-left-out`.
 */
export const isoTaskData: Format = {
  name: "iso-task-data",
  word: "ISO 11783",
  title: "ISO 11783-10 task data",
  usedFor: "tractor terminals",
  extension: "zip",
  mediaType: "application/zip",
  holds: ["parcels", "blocks", "rows"],
  usual: ["blocks", "rows"],
  choices: ["naming", "nameLength"],
  naming: { one: "Row {row}", several: "{block} {row}" },
  nameLength: 32,
  letters: "any",
  statesItself: true,
  places: "degrees",
  write: (job) => {
    if (job.layers.length === 0) return { files: [], findings: [] };
    return { files: [archive(job)], findings: [columnsLeftOut(job.layers)] };
  },
};

/** Names in capitals: terminals look for exactly these. */
function archive(job: HandOverJob): OutFile {
  const entry = { name: "TASKDATA/TASKDATA.XML", chunks: () => taskData(job) };
  return {
    name: "taskdata.zip",
    mediaType: isoTaskData.mediaType,
    content: { kind: "chunks", chunks: () => zipped([entry], job.writtenAt) },
  };
}
