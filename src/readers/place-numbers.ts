import type { Position } from "geojson";
import { type Finding, say } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { type CoordinateSystem, statedSystem } from "../core/systems/coordinate-system.ts";
import { drawnSmall, numbersOffSystem, statedSystemUnread } from "./drawn-findings.ts";
import { type FileUnit, fileUnits, isFileUnit, largestDrawn_m, leastDrawn_m } from "./file-units.ts";
import { landsWell } from "./lands-well.ts";
import type { Question, ReadingAnswers } from "./reading.ts";

/** What a drawing or a survey file says about its numbers. */
export interface StatedNumbers {
  readonly name: string;
  /** A code or a definition; null where none is said. */
  readonly system: string | null;
  /** What it says that its lengths are counted in; null where nothing is said, or nothing that is to be believed. */
  readonly unit: FileUnit | null;
  /** What its numbers reach over: x east, y north. */
  readonly box: { readonly least: readonly [x: number, y: number]; readonly most: readonly [x: number, y: number] };
}

/** A file's numbers as places, or what is to be answered before they are. */
export type Placing =
  | { readonly kind: "open"; readonly questions: readonly Question[] }
  | {
      readonly kind: "placed";
      /** The system in words. */
      readonly system: string;
      /** Longitude and latitude, and the height in metres where there is one. */
      position(x: number, y: number, z: number | null): Position;
    };

/**
 * How the numbers of a file lie on the earth, by what it states and what a person has answered; never guessed. Findings:
 * `readers/numbers-off-system`, `readers/stated-system-unread`, `readers/drawn-small`, `systems/*` of an answer that is no system.
 */
export function placeNumbers(stated: StatedNumbers, answers: ReadingAnswers): Outcome<Placing> {
  const said = answers.system ?? stated.system;
  if (said === null) return open([systemQuestion(stated)]);
  const read = statedSystem(said);
  if (!read.ok) {
    if (answers.system !== null) return failure(read.findings);
    return open([systemQuestion(stated)], [statedSystemUnread(stated.name, said)]);
  }
  const system = read.value;
  const { unit, findings } = unitOf(stated, system, answers);
  if (unit === null) return open([unitQuestion(stated, system)], read.findings);
  return ordered(stated, system, unit, answers, [...read.findings, ...findings]);
}

function ordered(
  stated: StatedNumbers,
  system: CoordinateSystem,
  unit: FileUnit | "deg",
  { isSwapped }: ReadingAnswers,
  findings: readonly Finding[],
): Outcome<Placing> {
  const ownUnits = unit === "deg" || system.unit === "deg" ? 1 : fileUnits[unit].metres / fileUnits[system.unit].metres;
  const height_m = unit === "deg" ? 1 : fileUnits[unit].metres;
  const corners = [stated.box.least, stated.box.most].map(([x, y]) => [x * ownUnits, y * ownUnits] as const);
  const lands = (isTurned: boolean) =>
    corners.every(([x, y]) => (isTurned ? landsWell(system, y, x) : landsWell(system, x, y)));
  if (isSwapped === null && !lands(false) && lands(true)) return open([orderQuestion(stated.name)], findings);
  if (!lands(isSwapped === true)) return failure([numbersOffSystem(stated.name, system.name)]);
  return success<Placing>(
    {
      kind: "placed",
      system: system.name,
      position: (x, y, z) => {
        const [east, north] = isSwapped === true ? [y, x] : [x, y];
        const [lon, lat] = system.toLonLat(east * ownUnits, north * ownUnits);
        return z === null ? [lon, lat] : [lon, lat, z * height_m];
      },
    },
    findings,
  );
}

/** The unit, when it is beyond doubt: answered, or said and the system's own too. Small units are believed where the size agrees. */
function unitOf(
  { name, unit, box }: StatedNumbers,
  system: CoordinateSystem,
  answers: ReadingAnswers,
): { readonly unit: FileUnit | "deg" | null; readonly findings: readonly Finding[] } {
  if (system.unit === "deg") return { unit: "deg", findings: [] };
  if (answers.unit !== null) return { unit: answers.unit, findings: [] };
  if (unit === null || unit === system.unit) return { unit, findings: [] };
  const { metres, words, isSmall } = fileUnits[unit];
  const reach_m = metres * Math.max(box.most[0] - box.least[0], box.most[1] - box.least[1]);
  const isBelieved = isSmall && system.unit === "m" && reach_m > leastDrawn_m && reach_m < largestDrawn_m;
  return isBelieved ? { unit, findings: [drawnSmall(name, words)] } : { unit: null, findings: [] };
}

function systemQuestion({ name, box: { least, most } }: StatedNumbers): Question {
  const mayBeDegrees = least[0] >= -180 && most[0] <= 180 && least[1] >= -90 && most[1] <= 90;
  return {
    about: "system",
    asked: say`${name} does not say which coordinate system its numbers are in. They run from ${short(least)} to ${short(most)}.`,
    offered: mayBeDegrees ? [{ value: "EPSG:4326", told: say`Longitude and latitude in degrees, WGS 84` }] : [],
  };
}

function unitQuestion({ name, unit }: StatedNumbers, system: CoordinateSystem): Question {
  const says =
    unit === null
      ? say`${name} does not say for sure what its lengths are counted in`
      : say`${name} says that it counts ${fileUnits[unit].words}`;
  const own = isFileUnit(system.unit) ? say`, its coordinate system counts ${fileUnits[system.unit].words}` : say``;
  const answers = ["m", "ft", "us-ft"] as const;
  const first = answers.filter((each) => each === system.unit);
  return {
    about: "unit",
    asked: [...says, ...own, ". What are they counted in? Feet taken for survey feet put everything metres off."],
    offered: [...first, ...answers.filter((each) => each !== system.unit)].map((value) => ({
      value,
      told: [fileUnits[value].words],
    })),
  };
}

function orderQuestion(name: string): Question {
  return {
    about: "order",
    asked: say`The first numbers in ${name} look like northings where eastings should be. Which come first?`,
    offered: [
      { value: "yes", told: say`The other way round than the format says` },
      { value: "no", told: say`As the format says` },
    ],
  };
}

function open(questions: readonly Question[], findings: readonly Finding[] = []): Outcome<Placing> {
  return success<Placing>({ kind: "open", questions }, findings);
}

function short([x, y]: readonly [x: number, y: number]): string {
  return `${Number(x.toFixed(2))}, ${Number(y.toFixed(2))}`;
}
