import type { Geometry, Position } from "geojson";
import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import type { CoordinateSystem } from "../../core/systems/coordinate-system.ts";
import type { FoundFile, ReadingAnswers } from "../reading.ts";
import { linesUnread, lineUnread, listTooLong, noCorners, numbersBeside } from "./corner-findings.ts";
import { type CornerLine, cornerLine, labelsOf } from "./corner-line.ts";
import { cornersInLine } from "./corners-in-line.ts";
import { coursesIn } from "./courses.ts";
import { type PlacedCorners, placeDegrees, placePlane, placeUtm, systemSaid } from "./place-corners.ts";
import { readBoundary } from "./read-boundary.ts";
import type { Closure } from "./traverse.ts";

/** What a pasted list of corners came to, beside its features. */
export interface CornerList extends FoundFile {
  /** In words: "degrees, latitude first". */
  readonly notation: string;
  /** Of a boundary told by bearings and distances: by how much its end misses its beginning; null for other lists. */
  readonly closure: Closure | null;
}

interface NumberedLine {
  readonly line: number;
  readonly written: string;
}

/** Two thousand corners: more come as files. */
const mostLetters = 50_000;
/** Lines told one by one. */
const mostTold = 5;

/**
 * Corners as they are pasted or typed, in any of the common notations. A list of three places or more is an outline, of two a line. A
 * boundary told by bearings and distances begins at `begin`, or at a corner that stands in its text before the first side. Findings:
 * `readers/no-corners`, `readers/list-too-long`, `readers/line-unread`, `readers/lines-unread`, `readers/corners-elsewhere`,
 * `readers/utm-datum-taken`, those of `readBoundary` and of the system.
 */
export function readCornerList(
  text: string,
  answers: ReadingAnswers,
  begin: readonly [lon_deg: number, lat_deg: number] | null,
): Outcome<CornerList> {
  if (text.length > mostLetters) return failure([listTooLong(mostLetters)]);
  const said = systemSaid(text, answers);
  if (!said.ok) return said;
  const lines = linesWithNumbers(text);
  const label = labelsOf(lines.map(({ written }) => written));
  const read = lines.map((each) => ({ ...each, corner: cornerLine(each.written, label) }));
  const { courses, unread } = coursesIn(withoutCode(text));
  if (courses.length === 0 || areCorners(read.map(({ corner }) => corner))) return corners(read, said.value, answers);
  const beforeFirst = read.filter(({ line }) => line < (courses[0]?.line ?? 0));
  const told = begin === null ? beginningIn(beforeFirst, said.value, answers) : null;
  const boundary = readBoundary(courses, text, said.value, answers, begin ?? told?.at ?? null);
  if (!boundary.ok) return boundary;
  const { positions, system, closure, questions } = boundary.value;
  const wrong = unread.filter(({ line }) => line !== told?.line);
  return success(
    {
      format: "corners",
      notation: "bearings and distances",
      system,
      features: featuresOf(positions),
      questions,
      closure,
    },
    [...toldUnread(wrong), ...boundary.findings],
  );
}

/** Lines that hold a number; a heading without one is no corner. An EPSG code is taken out: it is no corner either. */
function linesWithNumbers(text: string): readonly NumberedLine[] {
  return withoutCode(text)
    .split(/\r\n?|\n/)
    .flatMap((whole, i) => cornersInLine(whole).map((written) => ({ line: i + 1, written })))
    .filter(({ written }) => /\d/.test(written) && !/^\s*(?:#|\/\/)/.test(written));
}

function withoutCode(text: string): string {
  return text.replace(/\(?\bepsg\s*[:#]?\s*\d{4,6}\b\)?/gi, "");
}

/** Whether all lines are corners that lie near each other: "N 45°30'15" E 120" may be read as one, but not five such lines. */
function areCorners(read: readonly CornerLine[]): boolean {
  if (read.length === 0 || read.some(({ kind }) => kind === "unread")) return false;
  const degrees = read.filter((each) => each.kind === "degrees");
  const isNear = (of: (each: (typeof degrees)[number]) => number) =>
    degrees.every((each) => Math.abs(of(each) - of(degrees[0] ?? each)) < 1);
  return isNear(({ lat_deg }) => lat_deg) && isNear(({ lon_deg }) => lon_deg);
}

function corners(
  read: readonly (NumberedLine & { readonly corner: CornerLine })[],
  stated: CoordinateSystem | null,
  answers: ReadingAnswers,
): Outcome<CornerList> {
  const first = read.find(({ corner }) => corner.kind !== "unread")?.corner;
  const wrong = read.flatMap(({ line, written, corner }) => {
    if (corner.kind === "unread") return [{ line, written, reason: corner.reason }];
    return corner.kind === first?.kind
      ? []
      : [{ line, written, reason: "it is of another kind than the first corner" }];
  });
  if (first === undefined) return failure([...toldUnread(wrong), noCorners()]);
  const placed = place(
    read.map(({ corner }) => corner),
    stated,
    answers,
    first.kind,
  );
  if (!placed.ok) return failure([...toldUnread(wrong), ...placed.findings]);
  const { notation, system, positions, questions } = placed.value;
  const beside = read.filter(({ corner }) => corner.kind === "degrees" && corner.hasMore).length;
  const found = { format: "corners", notation, system, features: featuresOf(positions), questions, closure: null };
  const told = beside > 0 ? [numbersBeside(beside)] : [];
  return success(found, [...toldUnread(wrong), ...told, ...placed.findings]);
}

function place(
  lines: readonly CornerLine[],
  stated: CoordinateSystem | null,
  answers: ReadingAnswers,
  kind: CornerLine["kind"],
): Outcome<PlacedCorners> {
  switch (kind) {
    case "degrees":
      return placeDegrees(
        lines.filter((line) => line.kind === "degrees"),
        stated,
        answers,
      );
    case "utm":
      return placeUtm(
        lines.filter((line) => line.kind === "utm"),
        stated,
      );
    case "plane":
      return placePlane(
        lines.filter((line) => line.kind === "plane"),
        stated,
        answers,
      );
    case "unread":
      return failure([noCorners()]);
    default:
      return kind satisfies never;
  }
}

/** The corner that stands before the first side: "Beginning at 38.29140, -122.45800". */
function beginningIn(
  lines: readonly (NumberedLine & { readonly corner: CornerLine })[],
  stated: CoordinateSystem | null,
  answers: ReadingAnswers,
): { readonly at: readonly [lon_deg: number, lat_deg: number]; readonly line: number } | null {
  for (const { line, written, corner } of lines) {
    const bare = corner.kind === "unread" ? cornerLine(withoutWords(written), 0) : corner;
    // The system may be named for its grid north alone.
    const own = bare.kind === "degrees" && stated?.kind !== "geographic" ? null : stated;
    const placed = place([bare], own, answers, bare.kind);
    const [lon, lat] = (placed.ok ? placed.value.positions[0] : undefined) ?? [];
    if (lon !== undefined && lat !== undefined) return { at: [lon, lat], line };
  }
  return null;
}

/** "Beginning at N 1870090.2 E 6480120.5, an iron pin." without what is said around the numbers. */
function withoutWords(written: string): string {
  const end = /^.*\d\s*(?:["'°]\s*)?(?:[nsew]\b)?/i.exec(written)?.[0] ?? "";
  return end.replace(/^.*?(?=(?:\b[nsewxy]\s*[:=]?\s*)?[+-]?\d)/i, "");
}

function toldUnread(lines: readonly (NumberedLine & { readonly reason: string })[]): readonly Finding[] {
  const told = lines.slice(0, mostTold).map(({ line, written, reason }) => lineUnread(line, written, reason));
  return lines.length > mostTold ? [...told, linesUnread(lines.length - mostTold)] : told;
}

/** An outline of three corners or more, a line of two, or a point; the first corner said again at the end is one corner. */
function featuresOf(positions: readonly Position[]): CornerList["features"] {
  const [first, last] = [positions[0], positions.at(-1)];
  if (first === undefined || last === undefined) return [];
  const isClosed = positions.length > 3 && first[0] === last[0] && first[1] === last[1];
  const places = isClosed ? positions.slice(0, -1) : [...positions];
  const geometry: Geometry =
    places.length === 1
      ? { type: "Point", coordinates: first }
      : places.length === 2
        ? { type: "LineString", coordinates: places }
        : { type: "Polygon", coordinates: [[...places, first]] };
  return [{ name: null, layer: null, geometry, values: [] }];
}
