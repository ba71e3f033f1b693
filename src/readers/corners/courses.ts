import { unitLength_m } from "../../core/systems/unit-length.ts";

/** One side of a boundary as a description tells it. */
export interface Course {
  readonly line: number;
  /** Clockwise from the north of the description, degrees in [0, 360). */
  readonly bearing_deg: number;
  readonly distance: number;
  /** null: the description does not say what it is counted in. */
  readonly unit: CourseUnit | null;
}

export type CourseUnit = "m" | "ft" | "us-ft" | "chain" | "rod" | "link" | "yard";

/** Feet in the old units of American deeds: a chain is 66 ft, 100 links or 4 rods (common practice, no source). */
const feetIn: Readonly<Record<Exclude<CourseUnit, "m" | "us-ft">, number>> = {
  ft: 1,
  chain: 66,
  rod: 16.5,
  link: 0.66,
  yard: 3,
};

/** Metres in one of a unit; what is counted in feet is so by the foot that is chosen. */
export function courseUnit_m(unit: CourseUnit, foot: "ft" | "us-ft"): number {
  if (unit === "m") return 1;
  return unit === "us-ft" ? unitLength_m["us-ft"] : feetIn[unit] * unitLength_m[foot];
}

const units: readonly (readonly [unit: CourseUnit, spelling: RegExp])[] = [
  ["us-ft", /^(?:us[- ]?(?:survey[- ]?)?(?:ft|foot|feet)|usft|ftus|survey (?:foot|feet|ft))$/],
  ["ft", /^(?:ft|foot|feet|')$/],
  ["m", /^(?:m|met(?:er|re)s?)$/],
  ["chain", /^(?:ch|chs|chains?)$/],
  ["link", /^(?:lk|lks|links?)$/],
  ["rod", /^(?:rd|rds|rods?|poles?|perch(?:es)?)$/],
  ["yard", /^(?:yd|yds|yards?)$/],
];

/** Blanks are single when a text is looked through, and numbers short: no text takes long. */
const angle = String.raw`(\d{1,3}(?:\.\d+)?)(?:[ \n]?(?:°|d(?:eg(?:rees?)?)?\b|-|(?<=[ \n]))[ \n]?(\d{1,2}(?:\.\d+)?)(?:[ \n]?(?:'|m(?:in(?:utes?)?)?\b|-|(?<=[ \n]))[ \n]?(\d{1,2}(?:\.\d+)?)(?:[ \n]?(?:"|s(?:ec(?:onds?)?)?\b))?|[ \n]?(?:'|m(?:in(?:utes?)?)?\b))?)?(?:[ \n]?(?:°|d(?:eg(?:rees?)?)?\b))?`;
const unit = String.raw`(?:us[- ]?(?:survey[- ]?)?(?:ft|foot|feet)\b|usft\b|ftus\b|survey (?:foot|feet|ft)\b|ft\b|foot\b|feet\b|met(?:er|re)s?\b|m\b|ch(?:ain)?s?\b|li?n?ks?\b|rods?\b|rds?\b|poles?\b|perch(?:es)?\b|yards?\b|yds?\b|'(?!\d))`;
/** A number that a degree sign follows is no distance. */
const amount = String.raw`(\d+(?:\.\d+)?)(?![\d.]*\s*(?:°|d\b|deg))\s*(${unit})?(?:\s*(?:and\s+)?(\d+(?:\.\d+)?)\s*(li?n?ks?\b))?`;
/** What may stand between a bearing and its distance: words; over the end of a line only to a number with its unit, before another bearing. */
const filler = String.raw`[^\d\n;]{0,120}?`;
const onward = String.raw`(?:(?!\b[ns](?:orth|outh)?\.?\s*\d)[^\d;]){0,120}?`;
const bearing = String.raw`\b([ns])(?:orth|outh)?\.?[ \n]?${angle}[ \n]?([ew])(?:ast|est)?\b\.?`;
const quadrant = new RegExp(`${bearing}(?:${filler}|${onward}(?=\\d+(?:\\.\\d+)?\\s*${unit}))${amount}`, "g");
/** A table with the distance before the bearing. */
const distanceFirst = new RegExp(String.raw`${amount}[\s,|]+${bearing}[ \t,;.|]*$`, "gm");
const cardinal = new RegExp(
  String.raw`\b(?:due\s+)?(north|south|east|west|[nsew])\b\.?(?!\s*\d+\s*(?:°|d|-\d))${filler}${amount}(?![\d.]| ?[ew]\b)`,
  "g",
);
const azimuth = new RegExp(
  String.raw`(?:^|\baz(?:imuth)?\.?\s*(?:of\s+)?)\s*${angle}\s*(?:az(?:imuth)?\b\.?)?[^\d\n;]{0,60}?(?:,|;|\t| )\s*${amount}\s*$`,
  "gm",
);

/** The sides that a description tells, in their order, and the lines with numbers that none of them is from. */
export function coursesIn(description: string): {
  readonly courses: readonly Course[];
  readonly unread: readonly { readonly line: number; readonly written: string; readonly reason: string }[];
} {
  const text = plainSpelling(description);
  const lines = linesOf(text, description);
  const { lineAt } = lines;
  const found: { readonly at: number; readonly course: Course | string }[] = [];
  const isTaken = new Uint8Array(text.length);
  const take = (at: number, end: number, course: Course | string): void => {
    if (isTaken.subarray(at, end).includes(1)) return;
    isTaken.fill(1, at, end);
    found.push({ at, course });
  };
  for (const match of text.matchAll(quadrant)) {
    const [whole, ns = "", d, m, s, ew = "", ...rest] = match;
    const turned = angleOf(d, m, s);
    const bearing = turned === null || turned > 90 ? null : quadrantBearing(ns, ew, turned);
    take(match.index, match.index + whole.length, courseOf(lineAt(match.index), bearing, rest));
  }
  for (const match of text.matchAll(distanceFirst)) {
    const [whole, written, unitText, more, moreUnit, ns = "", d, m, s, ew = ""] = match;
    const turned = angleOf(d, m, s);
    const own = turned === null || turned > 90 ? null : quadrantBearing(ns, ew, turned);
    const at = match.index + whole.length - 1;
    take(match.index, match.index + whole.length, courseOf(lineAt(at), own, [written, unitText, more, moreUnit]));
  }
  for (const match of text.matchAll(azimuth)) {
    const [whole, d, m, s, ...rest] = match;
    // "30 June 2019" is no side: an angle has its mark or its word, or the distance has its unit.
    if (unitNamed(rest[1]) === null && !/°|'|\baz|\d\s*d/.test(whole)) continue;
    const turned = angleOf(d, m, s);
    take(
      match.index,
      match.index + whole.length,
      courseOf(lineAt(match.index), turned === null || turned > 360 ? null : turned % 360, rest),
    );
  }
  for (const match of text.matchAll(cardinal)) {
    const [whole, way = "", ...rest] = match;
    // "N 1870090.2" is a northing: without a unit a side to the north has its line to itself.
    const isAlone = lines.plain(lineAt(match.index)).trim() === whole.trim();
    if (unitNamed(rest[1]) === null && !(isAlone && Number(rest[0]) < 10_000)) continue;
    const bearing = { n: 0, e: 90, s: 180, w: 270 }[way.charAt(0)] ?? null;
    take(match.index, match.index + whole.length, courseOf(lineAt(match.index), bearing, rest));
  }
  const inOrder = found.sort((one, other) => one.at - other.at);
  const courses = inOrder.flatMap(({ course }) => (typeof course === "string" ? [] : [course]));
  const unread = new Map<number, string>();
  for (const [line, at, end] of lines.spans) {
    const written = text.slice(at, end);
    const speaks = /\d/.test(written) && /°|\b[ns][^a-z]*\d|\b(?:north|south|east|west|thence)\b/.test(written);
    if (speaks && !isTaken.subarray(at, end).includes(1)) unread.set(line, "it has no bearing with a distance");
  }
  for (const { index } of text.matchAll(new RegExp(bearing, "g"))) {
    if (isTaken[index] !== 1) unread.set(lineAt(index), "it has a bearing without a distance");
  }
  for (const { at, course } of inOrder) if (typeof course === "string") unread.set(lineAt(at), course);
  const told = [...unread].sort(([one], [other]) => one - other);
  return { courses, unread: told.map(([line, reason]) => ({ line, written: lines.written(line), reason })) };
}

function courseOf(
  line: number,
  bearing_deg: number | null,
  [written, unitText, more, moreUnit]: readonly (string | undefined)[],
): Course | string {
  if (bearing_deg === null)
    return "minutes and seconds go to 59, a bearing to 90 degrees from north or south, an azimuth to 360";
  const own = unitNamed(unitText);
  const links = more === undefined || unitNamed(moreUnit) !== "link" ? 0 : Number(more);
  // "3 chains 25 links" is 3.25 chains.
  const distance = Number(written) + (own === "chain" ? links / 100 : 0);
  return distance > 0 ? { line, bearing_deg, distance, unit: own } : "its distance is 0";
}

function unitNamed(text: string | undefined): CourseUnit | null {
  const plain = (text ?? "").trim();
  return plain === "" ? null : (units.find(([, spelling]) => spelling.test(plain))?.[0] ?? null);
}

function angleOf(degrees = "", minutes = "0", seconds = "0"): number | null {
  if (Number(minutes) >= 60 || Number(seconds) >= 60) return null;
  if (degrees.includes(".") && Number(minutes) > 0) return null;
  return Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
}

function quadrantBearing(ns: string, ew: string, turned: number): number {
  if (ns === "n") return ew === "e" ? turned : (360 - turned) % 360;
  return ew === "e" ? 180 - turned : 180 + turned;
}

/** Where the lines of a text lie, and how they were written. Lines are counted from 1. */
function linesOf(text: string, description: string) {
  const [plain, written] = [text.split("\n"), description.split(/\r\n?|\n/)];
  let begin = 0;
  const spans = plain.map((line, i) => {
    const span = [i + 1, begin, begin + line.length] as const;
    begin += line.length + 1;
    return span;
  });
  return {
    spans,
    plain: (line: number) => plain[line - 1] ?? "",
    written: (line: number) => written[line - 1] ?? "",
    /** The line of a letter, by halving. */
    lineAt: (at: number): number => {
      let [low, high] = [0, spans.length - 1];
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if ((spans[middle]?.[1] ?? 0) <= at) low = middle;
        else high = middle - 1;
      }
      return low + 1;
    },
  };
}

/** Lower case, one spelling for each mark, thousands without their commas; as many lines as before. */
function plainSpelling(text: string): string {
  return text
    .toLowerCase()
    .replace(/\r\n?/g, "\n")
    .replace(/[^\S\n]+/g, " ")
    .replace(/ ?\n ?/g, "\n")
    .replace(/\d{13,}/g, "#")
    .replace(/[′’‘`´]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/[−–—‐‑]/g, "-")
    .replace(/[º˚]/g, "°")
    .replace(/\bu\.\s?s\.\s?/g, "us ")
    .replace(/(?<=\d),(?=\d{3}(?:\D|$))/g, "");
}
