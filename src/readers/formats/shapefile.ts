import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { nothingFound } from "../file-findings.ts";
import { placeLayers } from "../placing.ts";
import type { FoundFile, NamedBytes, Reader, ReadingAnswers, ReadingFollowed } from "../reading.ts";
import { unzipped } from "../unzip.ts";
import { noShapes } from "./shapefile/findings.ts";
import { type SetFeatures, setFeatures } from "./shapefile/set-features.ts";
import { isOfShapefile, type ShapeSet, shapeSets } from "./shapefile/sets.ts";

const title = "ESRI shapefile";
/** The vines of 40 ha with their table are 20 to 40 MB unpacked. */
const mostUnpacked_bytes = 100e6;
const shpBegins = "\u0000\u0000\u0027\u000a";

/**
 * ESRI shapefile (technical description of July 1998): a zip archive with one or several sets of files, or a .shp by itself. Findings: those
 * of the archive, of each set, and of the coordinate system.
 */
export const shapefileReader: Reader = {
  title,
  endings: ["zip", "shp"],
  most_bytes: mostUnpacked_bytes,
  begins: (head) => head.startsWith(shpBegins) || (head.startsWith("PK") && /\.(shp|shx|dbf)/i.test(head)),
  read: async (file, answers, followed) => {
    const bytes = new Uint8Array(await file.slice(0, file.size).arrayBuffer());
    const sets = setsIn(file, bytes);
    return sets.ok ? foundIn(file.name, sets.value, answers, followed) : failure(sets.findings);
  },
};

function setsIn({ name }: NamedBytes, bytes: Uint8Array): Outcome<readonly ShapeSet[]> {
  const isArchive = bytes[0] === 0x50 && bytes[1] === 0x4b;
  if (!isArchive) {
    const alone = { name: name.replace(/\.shp$/i, ""), shp: bytes, shx: null, dbf: null, prj: null, cpg: null };
    return success([alone]);
  }
  const files = unzipped(bytes, name, isOfShapefile, mostUnpacked_bytes);
  if (!files.ok) return failure(files.findings);
  const sets = shapeSets(files.value);
  return sets.length === 0 ? failure([noShapes(name)]) : success(sets);
}

function foundIn(
  name: string,
  sets: readonly ShapeSet[],
  answers: ReadingAnswers,
  followed: ReadingFollowed,
): Outcome<FoundFile> {
  const layers: SetFeatures[] = [];
  const findings: Finding[] = [];
  const soFar = { records: 0, places: 0, values: 0 };
  for (const [i, set] of sets.entries()) {
    const progress = (share_ratio: number): void => followed.progress?.((i + share_ratio) / sets.length);
    const layer = setFeatures(set, soFar, { ...followed, progress });
    if (!layer.ok) return failure(layer.findings);
    findings.push(...layer.findings);
    layers.push(layer.value);
  }
  const features = layers.flatMap((layer) => layer.features);
  if (features.length === 0) return failure([...findings, nothingFound(name, title)]);
  const placing = placeLayers(layers, answers);
  if (!placing.ok) return failure(placing.findings);
  const { questions, system } = placing.value;
  return success({ format: title, system, features: questions.length > 0 ? [] : features, questions }, [
    ...findings,
    ...placing.findings,
  ]);
}
