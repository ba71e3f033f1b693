import type { Position } from "geojson";
import { positionsOf } from "../core/exchange/bounds.ts";
import { say } from "../core/finding.ts";
import { type Outcome, success } from "../core/outcome.ts";
import { lonLatSystem, statedSystem } from "../core/systems/coordinate-system.ts";
import { type FileUnit, isFileUnit } from "./file-units.ts";
import type { FoundSoFar } from "./found-so-far.ts";
import { placeNumbers } from "./place-numbers.ts";
import type { FoundFeature, Question, ReadingAnswers } from "./reading.ts";
import { withPositions } from "./with-positions.ts";

/** Vines grow between these latitudes, north and south; from memory. */
const vineLatitudes = { least_deg: 25, most_deg: 58 };

/** What a file says about its numbers. */
export interface FoundNumbers {
  readonly name: string;
  /** A system that is stated; null for longitude and latitude, as the format has them. */
  readonly stated: string | null;
  /** Whether programs write other numbers than longitude and latitude into such files without a word. */
  readonly mayBeProjected: boolean;
}

export interface Placed {
  readonly features: readonly FoundFeature[];
  readonly questions: readonly Question[];
  /** The system in words. */
  readonly system: string;
}

/**
 * What was found, on the globe: numbers in another system that is stated or answered are turned into longitude and latitude; numbers that can not be
 * what the format says, or are doubtful, are asked about; single things off the globe are left out. Findings: those of `place-numbers.ts`.
 */
export function placeFound(found: FoundSoFar, numbers: FoundNumbers, answers: ReadingAnswers): Outcome<Placed> {
  const { name, stated, mayBeProjected } = numbers;
  const [first] = found.features;
  if (first === undefined) return success({ features: [], questions: [], system: lonLatSystem.name });
  if ((answers.system ?? stated) !== null) return bySystem(found, numbers, answers);
  const turned = answers.isSwapped === true;
  const onGlobe = found.features.filter(({ geometry }) => positionsOf(geometry).every((at) => isLonLat(at, turned)));
  if (2 * onGlobe.length < found.features.length && answers.isSwapped === null) {
    const couldBeTurned = found.features.every(({ geometry }) =>
      positionsOf(geometry).every((at) => isLonLat(at, true)),
    );
    if (couldBeTurned) return asking(orderQuestion(name, "cannot be"));
    if (mayBeProjected) return bySystem(found, numbers, answers);
  }
  if (answers.isSwapped === null && onGlobe.length > 0 && isDoubtful(onGlobe))
    return asking(orderQuestion(name, "would be"));
  const kept = new Set(onGlobe);
  for (const feature of found.features)
    if (!kept.has(feature)) found.leaveOut(feature.name ?? "a thing without a name");
  return success({
    features: turned ? onGlobe.map((feature) => moved(feature, swapped)) : onGlobe,
    questions: [],
    system: lonLatSystem.name,
  });
}

function bySystem(found: FoundSoFar, { name, stated }: FoundNumbers, answers: ReadingAnswers): Outcome<Placed> {
  const box = boxOf(found.features);
  const placing = placeNumbers({ name, system: stated, unit: ownUnit(answers.system ?? stated), box }, answers);
  if (!placing.ok) return placing;
  if (placing.value.kind === "open") {
    return success({ features: [], questions: placing.value.questions, system: "" }, placing.findings);
  }
  const { system, position } = placing.value;
  const put = ([x = 0, y = 0, height]: Position): Position =>
    height === undefined ? position(x, y, null) : [...position(x, y, null), height];
  return success({ features: found.features.map((each) => moved(each, put)), questions: [], system }, placing.findings);
}

/** A system's own unit: where numbers stand beside the name of their system, they count what it counts. */
function ownUnit(said: string | null): FileUnit | null {
  const system = said === null ? null : statedSystem(said);
  return system?.ok === true && isFileUnit(system.value.unit) ? system.value.unit : null;
}

function asking(question: Question): Outcome<Placed> {
  return success({ features: [], questions: [question], system: lonLatSystem.name });
}

function moved(feature: FoundFeature, put: (at: Position) => Position): FoundFeature {
  return { ...feature, geometry: withPositions(feature.geometry, put) };
}

function swapped([x = 0, y = 0, ...rest]: Position): Position {
  return [y, x, ...rest];
}

function isLonLat([x = Number.NaN, y = Number.NaN]: Position, isTurned: boolean): boolean {
  return isTurned ? Math.abs(y) <= 180 && Math.abs(x) <= 90 : Math.abs(x) <= 180 && Math.abs(y) <= 90;
}

/** No vines would grow at the latitudes as they stand, but would at the longitudes. */
function isDoubtful(features: readonly FoundFeature[]): boolean {
  const grows = (degrees: number) =>
    Math.abs(degrees) >= vineLatitudes.least_deg && Math.abs(degrees) <= vineLatitudes.most_deg;
  return features.every(({ geometry }) => positionsOf(geometry).every(([x = 0, y = 0]) => !grows(y) && grows(x)));
}

function orderQuestion(name: string, claim: "cannot be" | "would be"): Question {
  return {
    about: "order",
    asked:
      claim === "cannot be"
        ? say`The numbers in ${name} cannot be longitude first, latitude second, as the format has them. Do they stand the other way round?`
        : say`Read as the format has it, longitude first, ${name} would lie where hardly any vines grow; the other way round it would not. Which comes first?`,
    offered: [
      { value: "yes", told: say`Latitude first, longitude second` },
      { value: "no", told: say`Longitude first, latitude second` },
    ],
  };
}

function boxOf(features: readonly FoundFeature[]) {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of features) {
    for (const [x = 0, y = 0] of positionsOf(geometry)) {
      [west, south] = [Math.min(west, x), Math.min(south, y)];
      [east, north] = [Math.max(east, x), Math.max(north, y)];
    }
  }
  return { least: [west, south], most: [east, north] } as const;
}
