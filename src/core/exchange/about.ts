import { datumNote } from "../systems/datum-note.ts";
import { scaleAt } from "../systems/scale-at.ts";
import { text } from "../units.ts";
import type { Format, HandOverJob, OutFile } from "./format.ts";
import type { Layer } from "./layers/layer.ts";
import { rounded } from "./rounding.ts";
import { isSketch } from "./sketch.ts";
import { unitWords } from "./unit-words.ts";

/** What a format knows about the files it wrote, for the text about them. */
export interface AboutDetails {
  /** What the files are called up to their ending: "vines", "plan". */
  readonly stem: string;
  /** Each file with what it holds: ["vines.csv", "3600 vines, a line each"]. */
  readonly files: readonly (readonly [name: string, holds: string])[];
  /** Columns with their meaning (see column-meanings.ts); none where the format has no columns. */
  readonly columns: readonly (readonly [name: string, meaning: string])[];
  /** What else there is to know, a sentence each: what was cut, what the format has no place for. */
  readonly notes: readonly string[];
}

/** One part of the text: a head with its lines. */
export interface AboutPart {
  readonly head: string;
  readonly lines: readonly string[];
}

/** The text beside files that cannot say by themselves what their numbers mean: `<stem>-about.txt`, UTF-8, CRLF. */
export function aboutFile(job: HandOverJob, format: Format, details: AboutDetails): OutFile {
  const name = `${details.stem}-about.txt`;
  return {
    name,
    mediaType: "text/plain; charset=utf-8",
    content: { kind: "chunks", chunks: () => [aboutText(job, format, details)] },
  };
}

/** The same as a text, for a README in an archive. */
export function aboutText(job: HandOverJob, format: Format, details: AboutDetails): string {
  return aboutParts(job, format, details)
    .map(({ head, lines }) => [head, ...lines.map((line) => `  ${line}`), ""].map((line) => `${line}\r\n`).join(""))
    .join("");
}

/** The same in its parts, for a sheet or a description inside a file. Parts without lines are left out. */
export function aboutParts(job: HandOverJob, format: Format, details: AboutDetails): readonly AboutPart[] {
  const { plan, layers, writtenAt } = job;
  const parts: readonly AboutPart[] = [
    {
      head: plan.project.name === "" ? format.title : plan.project.name,
      lines: [`${format.title}, for ${format.usedFor}.`, `Written ${writtenAt}.`],
    },
    { head: "Not for staking", lines: isSketch(plan) && layers.length > 0 ? [sketchLine] : [] },
    { head: "Files", lines: details.files.map(([name, holds]) => `${name}: ${holds}`) },
    { head: "Places", lines: layers.length === 0 ? [] : placeLines(job) },
    { head: "Heights", lines: layers.length === 0 ? [] : [heightLine(job, format)] },
    { head: "Columns", lines: details.columns.map(([name, meaning]) => `${name}: ${meaning}`) },
    { head: "Names changed", lines: namesChanged(job) },
    { head: "Notes", lines: details.notes },
  ];
  return parts.filter(({ lines }) => lines.length > 0);
}

/** "12 rows", "1 vine": how many of what a layer has, in words. */
export function countOf({ kind, count }: Pick<Layer, "kind" | "count">): string {
  return `${count} ${count === 1 ? singular[kind] : plural[kind]}`;
}

const sketchLine =
  "The outline was walked with a phone: what follows from it is a sketch, metres off. Have it surveyed first.";

function placeLines({ system, plan }: HandOverJob): readonly string[] {
  const notes = datumNote(system).map(({ message, reason }) => text([...message, " ", ...reason], plan.project.units));
  if (system.kind === "geographic") {
    return [`Longitude and latitude in degrees, ${system.name}; 8 decimals are 1 mm.`, ...notes];
  }
  const from = system.kind === "local" ? " Datum of the origin: WGS 84." : "";
  return [
    `Easting and northing in ${unitWords[system.unit]}, ${system.name}.${from}`,
    ...(system.code === null ? [`As a definition: ${system.definition}`] : []),
    ...scaleLines({ system, plan }),
    ...notes,
  ];
}

/** How lengths by the numbers differ from lengths on the ground, at the origin of the plan. */
function scaleLines({ system, plan }: Pick<HandOverJob, "system" | "plan">): readonly string[] {
  const origin = plan.ground?.frame.origin;
  const at = origin === undefined ? null : scaleAt(system, origin[0], origin[1]);
  if (origin === undefined || at === null) return [];
  const { scale_ratio, convergence_deg } = at;
  const where = `at longitude ${rounded(origin[0], 5)}, latitude ${rounded(origin[1], 5)}, the middle of the plan`;
  return [
    `Scale factor ${scale_ratio.toFixed(8)} ${where}: 100 m on the ellipsoid are ${(100 * scale_ratio).toFixed(3)} m by these numbers.`,
    `Grid bearing = true bearing - ${convergence_deg.toFixed(4)} degrees there.`,
    "Lengths among the columns (..._m) are on the ground as planned, not by these numbers.",
  ];
}

function heightLine({ plan, choice, system }: HandOverJob, format: Format): string {
  const kind = plan.ground?.elevation.kind ?? "flat";
  if (!choice.heights) return "Heights were not asked for.";
  if (kind === "flat") return "The heights of the ground are not known: none are given.";
  const isOwnUnit = ["survey-csv", "dxf", "landxml"].includes(format.name) && system.unit !== "deg";
  const counted = isOwnUnit ? unitWords[system.unit] : "metres";
  return `Heights of the ground in ${counted}, counted from the same zero as the heights that were brought into the project; empty where not known.`;
}

function namesChanged({ names: { changed } }: HandOverJob): readonly string[] {
  const most = 1000;
  if (changed.length === 0) return [];
  const more = changed.length - most;
  return [
    `${changed.length} changed, to be unique, short enough and in letters that are kept; as wished, then as it is here:`,
    ...changed.slice(0, most).map(({ wished, name }) => `${wished} -> ${name}`),
    ...(more > 0 ? [`and ${more} more`] : []),
  ];
}

const singular: Readonly<Record<Layer["kind"], string>> = {
  parcels: "parcel",
  blocks: "block",
  rows: "row",
  vines: "vine",
  stakes: "training stake",
  posts: "post",
  anchors: "anchor",
  pegs: "offset peg",
  marks: "mark",
  route: "branch of the main line",
  pipes: "pipe",
  fittings: "fitting",
  stations: "trench station",
};

const plural: Readonly<Record<Layer["kind"], string>> = {
  parcels: "parcels",
  blocks: "blocks",
  rows: "rows",
  vines: "vines",
  stakes: "training stakes",
  posts: "posts",
  anchors: "anchors",
  pegs: "offset pegs",
  marks: "marks",
  route: "branches of the main line",
  pipes: "pipes",
  fittings: "fittings",
  stations: "trench stations",
};
