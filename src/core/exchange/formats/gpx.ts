import { type Format, type HandOverJob, type OutFile, ofShape, stemOf } from "../format.ts";
import { layerKinds } from "../layers/layer.ts";
import { filesOfPoints } from "./gpx/files-of-points.ts";
import { morePointsThanAFile, outlinesAsTracks } from "./gpx/findings.ts";
import { gpxChunks } from "./gpx/gpx-chunks.ts";

const mediaType = "application/gpx+xml";

/**
 * GPX 1.1: points as waypoints, lines as tracks, outlines as tracks with a segment a ring. Split into files of at most so many points
 * (waypoints and points of tracks together), block by block and row by row. Findings: `exchange/outlines-as-tracks`,
 * `exchange/more-points-than-a-file`.
 */
export const gpx: Format = {
  name: "gpx",
  word: "GPX",
  title: "GPX 1.1",
  usedFor: "handheld receivers and crew phones",
  extension: "gpx",
  mediaType,
  holds: layerKinds,
  // Vines of a block never fit an old handheld.
  usual: ["rows", "posts"],
  choices: ["naming", "nameLength", "pointsAFile", "heights"],
  naming: { one: "R{row}{code}{number:2}", several: "{block:2}{row}{code}{number:2}" },
  nameLength: 10,
  letters: "ascii",
  statesItself: true,
  places: "degrees",
  write: (job) => {
    const areas = ofShape(job.layers, "area").reduce((sum, { count }) => sum + count, 0);
    const { files, tooLong } = filesOf(job);
    return {
      files,
      findings: [
        ...(areas === 0 ? [] : [outlinesAsTracks(gpx.title, areas)]),
        ...(tooLong.length === 0 ? [] : [morePointsThanAFile(tooLong, job.choice.pointsAFile ?? 0)]),
      ],
    };
  },
};

function filesOf(job: HandOverJob): { readonly files: readonly OutFile[]; readonly tooLong: readonly string[] } {
  if (job.layers.length === 0) return { files: [], tooLong: [] };
  const stem = stemOf(job.layers);
  // What is split along the way of the layers has its waypoints first, as the schema wants them.
  const layers = [...ofShape(job.layers, "point"), ...ofShape(job.layers, "line"), ...ofShape(job.layers, "area")];
  const { files, tooLong } = filesOfPoints(layers, job.names, job.choice.pointsAFile);
  return {
    files: files.map((parts, i) => {
      const name = files.length === 1 ? `${stem}.gpx` : `${stem}-${i + 1}.gpx`;
      const place = files.length === 1 ? null : { number: i + 1, of: files.length };
      return { name, mediaType, content: { kind: "chunks", chunks: () => gpxChunks(job, gpx, name, parts, place) } };
    }),
    tooLong,
  };
}
