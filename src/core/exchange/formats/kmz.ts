import type { Format, HandOverJob, OutFile } from "../format.ts";
import { zipped } from "../zip.ts";
import { kmlChunks } from "./kml/kml-chunks.ts";
import { kml } from "./kml.ts";

const mediaType = "application/vnd.google-earth.kmz";

/** KMZ: the same KML as `doc.kml` in a zip archive. Source: OGC 12-007r2, section 6.4 (KMZ). */
export const kmz: Format = {
  ...kml,
  name: "kmz",
  word: "KMZ",
  title: "KMZ (KML 2.2, packed)",
  extension: "kmz",
  mediaType,
  write: (job) => ({ files: filesOf(job), findings: [] }),
};

function filesOf(job: HandOverJob): readonly OutFile[] {
  const [first] = job.layers;
  if (first === undefined) return [];
  const name = `${job.layers.length === 1 ? first.kind : "plan"}.kmz`;
  const entry = { name: "doc.kml", chunks: () => kmlChunks(job, kmz, name) };
  return [{ name, mediaType, content: { kind: "chunks", chunks: () => zipped([entry], job.writtenAt) } }];
}
