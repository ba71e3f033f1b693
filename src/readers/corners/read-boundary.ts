import type { Position } from "geojson";
import { type Finding, say } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { lonLat } from "../../core/plane/coordinate.ts";
import type { CoordinateSystem } from "../../core/systems/coordinate-system.ts";
import { scaleAt } from "../../core/systems/scale-at.ts";
import type { Question, ReadingAnswers } from "../reading.ts";
import { closingSide, closureError, curveAsChord, feetTaken, noBeginning } from "./corner-findings.ts";
import { type Course, courseUnit_m } from "./courses.ts";
import { type Closure, closureOf, placesFrom, type Side } from "./traverse.ts";

/** A boundary told by bearings and distances. */
export interface Boundary {
  /** The corners, the beginning first; none while something is asked or the beginning is not known. */
  readonly positions: readonly Position[];
  readonly system: string;
  readonly closure: Closure | null;
  readonly questions: readonly Question[];
}

/** What a careful tape comes to (common practice, calculation handbook 8.6): 1 in 3000. */
const carefulRatio = 3000;
/** An end that misses by more than a twentieth of the way was not meant to be the beginning. */
const openRatio = 20;

/**
 * The corners of a boundary description from its beginning, and how it closes. Which north its bearings count from is asked, and so is the
 * unit where the description does not say one. Distances are taken as measured on the ground. Findings: `readers/no-beginning`,
 * `readers/closure-error`, `readers/closing-side`, `readers/curve-as-chord`, `readers/feet-taken`.
 */
export function readBoundary(
  courses: readonly Course[],
  text: string,
  stated: CoordinateSystem | null,
  answers: ReadingAnswers,
  begin: readonly [lon_deg: number, lat_deg: number] | null,
): Outcome<Boundary> {
  const isCounted = courses.every(({ unit }) => unit !== null) || answers.unit !== null;
  const questions = [
    ...(isCounted ? [] : [unitQuestion]),
    ...(northOf(answers, stated, begin) === null ? [northQuestion] : []),
    ...(answers.north === "grid" && stated === null ? [gridQuestion] : []),
  ];
  const foot = answers.unit === "us-ft" ? "us-ft" : "ft";
  const sides = courses.map(({ bearing_deg, distance, unit }) => ({
    bearing_deg,
    length_m: distance * courseUnit_m(unit ?? answers.unit ?? "m", foot),
  }));
  const closure = isCounted ? closureOf(sides) : null;
  const findings = [...curves(text), ...feet(courses, sides, answers)];
  if (begin === null) findings.push(noBeginning());
  const turned_deg = northOf(answers, stated, begin);
  if (questions.length > 0 || begin === null || turned_deg === null || closure === null) {
    return success({ positions: [], system: "", closure, questions }, findings);
  }
  const turned = sides.map((side) => ({ ...side, bearing_deg: side.bearing_deg + turned_deg }));
  const places = placesFrom(lonLat(begin[0], begin[1]), turned);
  const { isOpen, finding } = closing(closure, sides);
  if (finding !== null) findings.push(finding);
  const corners = isOpen ? places : places.slice(0, -1);
  if (corners.some((each) => !each.every(Number.isFinite))) return failure(findings);
  const positions = corners.map(([lon, lat]) => [lon, lat]);
  return success({ positions, system: "bearings and distances from its first corner", closure, questions }, findings);
}

/** Degrees that bearings are turned by to count from true north; null where the answer is not there yet, or is no number. */
function northOf(
  { north }: ReadingAnswers,
  stated: CoordinateSystem | null,
  begin: readonly [lon_deg: number, lat_deg: number] | null,
): number | null {
  if (north === undefined || north === null || north.trim() === "") return null;
  if (north === "true") return 0;
  if (north === "grid") {
    if (stated === null || begin === null) return 0;
    return scaleAt(stated, begin[0], begin[1])?.convergence_deg ?? 0;
  }
  const [, digits = "", side = ""] = /^([+-]?\d+(?:\.\d+)?)\s*°?\s*([ew])?(?:ast|est)?$/i.exec(north.trim()) ?? [];
  const east_deg = digits === "" ? NaN : Number(digits) * (/w/i.test(side) ? -1 : 1);
  return Math.abs(east_deg) <= 180 ? east_deg : null;
}

function closing(
  closure: Closure,
  sides: readonly Side[],
): { readonly isOpen: boolean; readonly finding: Finding | null } {
  const { error_m, length_m, ratio, east_m, north_m } = closure;
  if (ratio === null) return { isOpen: false, finding: null };
  if (sides.length < 3 || ratio < openRatio) {
    if (sides.length < 2) return { isOpen: true, finding: null };
    const back_deg = ((Math.atan2(-east_m, -north_m) * 180) / Math.PI + 360) % 360;
    return { isOpen: true, finding: closingSide(error_m, `${back_deg.toFixed(2)}°`) };
  }
  const isRough = ratio < carefulRatio;
  return { isOpen: false, finding: closureError(error_m, length_m, Math.round(ratio), isRough) };
}

function curves(text: string): Finding[] {
  return text
    .split("\n")
    .flatMap((line, i) => (/\b(?:curve|arc|radius|chord)\b/i.test(line) ? [curveAsChord(i + 1)] : []));
}

/** The two feet are told apart only where it could be measured. */
function feet(courses: readonly Course[], sides: readonly Side[], { unit }: ReadingAnswers): readonly Finding[] {
  const inFeet_m = sides.reduce((sum, { length_m }, i) => {
    const counted = courses[i]?.unit ?? unit;
    return counted === "m" || counted === "us-ft" ? sum : sum + length_m;
  }, 0);
  const apart_m = inFeet_m * 2e-6;
  return unit === null && apart_m >= 0.002 ? [feetTaken(apart_m)] : [];
}

const unitQuestion: Question = {
  about: "unit",
  asked: say`What are the distances counted in?`,
  offered: [
    { value: "ft", told: say`Feet` },
    { value: "us-ft", told: say`US survey feet` },
    { value: "m", told: say`Metres` },
  ],
};

const northQuestion: Question = {
  about: "north",
  asked: say`Which north do the bearings count from? The deed calls it the basis of bearings.`,
  offered: [
    { value: "true", told: say`True north` },
    { value: "grid", told: say`Grid north of a coordinate system` },
  ],
};

const gridQuestion: Question = {
  about: "system",
  asked: say`Which coordinate system's grid north do the bearings count from?`,
  offered: [],
};
