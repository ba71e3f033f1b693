import { unitLength_m } from "../../systems/unit-length.ts";
import { aboutFile, countOf } from "../about.ts";
import { csvLine } from "../csv.ts";
import { type Format, featuresAChunk, type HandOverJob, type OutFile, ofShape, stemOf } from "../format.ts";
import type { Layer } from "../layers/layer.ts";
import { fixed } from "../tables/table.ts";
import { unitWords } from "../unit-words.ts";

/** Decimals of all its numbers, whatever they count. */
const decimals = 4;

/**
 * Point, northing, easting, height, code, or easting before northing: the table without heads that survey controllers take. ASCII, CRLF, no
 * quotes and no apostrophes, because names have letters, digits and `-._#` only. One code a kind: LINEPOST. Heights are in the unit of the
 * system, and empty where they are not known: 0 would be a height. Common practice, no source.
 */
export const surveyCsv: Format = {
  name: "survey-csv",
  word: "Survey list",
  title: "point, northing, easting, height, code",
  usedFor: "survey controllers",
  extension: "csv",
  mediaType: "text/csv; charset=us-ascii; header=absent",
  holds: ["vines", "stakes", "posts", "anchors", "pegs", "marks", "fittings", "stations"],
  usual: ["marks", "posts"],
  choices: ["system", "unit", "naming", "nameLength", "order", "heights"],
  naming: { one: "R{row}{code}{number:2}", several: "{block:3}{row}{code}{number:2}" },
  nameLength: 16,
  letters: "code",
  statesItself: false,
  places: "chosen, no degrees",
  write: (job) => {
    const layers = ofShape(job.layers, "point");
    if (layers.length === 0) return { files: [], findings: [] };
    if (job.system.unit === "deg") throw new Error("degrees are refused before a format is asked");
    const stem = stemOf(layers);
    return { files: [points(job, layers, stem), about(job, layers, stem)], findings: [] };
  },
};

function points(job: HandOverJob, layers: readonly Layer[], stem: string): OutFile {
  return {
    name: `${stem}.csv`,
    mediaType: surveyCsv.mediaType,
    content: { kind: "chunks", chunks: () => chunksOf(job, layers) },
  };
}

function* chunksOf({ names, system, choice }: HandOverJob, layers: readonly Layer[]): Generator<string> {
  const unit_m = system.unit === "deg" ? 1 : unitLength_m[system.unit];
  const isEastFirst = choice.order === "easting-first";
  let chunk = "";
  let count = 0;
  for (const layer of layers) {
    for (const feature of layer.features()) {
      if (feature.geometry.shape !== "point") continue;
      const { at, height_m } = feature.geometry.place;
      const [x, y] = system.fromLonLat(at[0], at[1]);
      const [east, north] = [fixed(x, decimals) ?? "", fixed(y, decimals) ?? ""];
      const height = height_m === null || !choice.heights ? "" : (fixed(height_m / unit_m, decimals) ?? "");
      const places = isEastFirst ? [east, north] : [north, east];
      chunk += csvLine([names.of(feature), ...places, height, codeOf(feature.parts.kind)]);
      count++;
      if (count % featuresAChunk === 0) {
        yield chunk;
        chunk = "";
      }
    }
  }
  if (chunk !== "") yield chunk;
}

function about(job: HandOverJob, layers: readonly Layer[], stem: string): OutFile {
  const { unit } = job.system;
  const heights = `height of the ground in ${unitWords[unit]}, as the other numbers; empty where it is not known`;
  const places = [
    ["northing", `north in ${unitWords[unit]}`],
    ["easting", `east in ${unitWords[unit]}`],
  ] as const;
  return aboutFile(job, surveyCsv, {
    stem,
    files: [[`${stem}.csv`, `${layers.map(countOf).join(", ")}; a line each, no line of heads`]],
    columns: [
      ["point", "the name, unique in this file"],
      ...(job.choice.order === "easting-first" ? [...places].reverse() : places),
      ["height", heights],
      ["code", "what it is, one code a kind"],
    ],
    // Counted when the text is written: a quarter of a million points take longer than a page may be held.
    get notes() {
      return codesIn(layers).map(([kind, count]) => `Code ${codeOf(kind)}: ${kind.replaceAll("-", " ")}, ${count}`);
    },
  });
}

/** "line-post" is LINEPOST: no sign in it that a controller could take for one of its own. */
function codeOf(kind: string): string {
  return kind.toUpperCase().replace(/[^A-Z0-9]/g, "");
}

/** The kinds of all points with how many there are of each. */
function codesIn(layers: readonly Layer[]): readonly (readonly [kind: string, count: number])[] {
  const counts = new Map<string, number>();
  for (const layer of layers) {
    for (const { parts } of layer.named()) counts.set(parts.kind, (counts.get(parts.kind) ?? 0) + 1);
  }
  return [...counts];
}
