import { type Format, type HandOverJob, type OutFile, stemOf } from "../format.ts";
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
  if (job.layers.length === 0) return [];
  const name = `${stemOf(job.layers)}.kmz`;
  const entry = { name: "doc.kml", chunks: () => kmlChunks(job, kmz, name) };
  return [{ name, mediaType, content: { kind: "chunks", chunks: () => zipped([entry], job.writtenAt) } }];
}
