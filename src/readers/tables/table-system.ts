import { type Finding, say } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { type CoordinateSystem, lonLatSystem, statedSystem } from "../../core/systems/coordinate-system.ts";
import { unitLength_m } from "../../core/systems/unit-length.ts";
import { unitsDisagree } from "../findings.ts";
import type { Question, ReadingAnswers } from "../reading.ts";
import type { HeadUnit } from "./place-heads.ts";
import type { TableLayout } from "./table-layout.ts";
import type { TableNumbers } from "./table-numbers.ts";

/** How the numbers of a table are taken. */
export interface TableSystem {
  /** null while it is asked for. */
  readonly system: CoordinateSystem | null;
  readonly isSwapped: boolean;
  /** Metres in one of the heights whose heads name no unit; null: they stay among the values. */
  readonly height_m: number | null;
  readonly questions: readonly Question[];
}

/** Surveyed lengths have four decimals at most; degrees that all have fewer than five would be metres off. */
const decimalsOfDegrees = 5;

/**
 * The system of a table's places, by its heads, its numbers and what a person answered; what they leave open becomes a question. Findings: those of
 * a system that is stated, `readers/units-disagree`.
 */
export function tableSystem(layout: TableLayout, numbers: TableNumbers, answers: ReadingAnswers): Outcome<TableSystem> {
  const isHeaded = layout.headLine > 0;
  const stated = answers.system === null ? null : statedSystem(answers.system);
  if (stated !== null && !stated.ok) return stated;
  const system = stated?.value ?? degreesBy(layout, numbers);
  const unit = layout.place.kind === "pairs" ? layout.place.unit : null;
  if (system !== null && unit !== null && !isSameUnit(unit, system)) return failure([unitsDisagree(system.name)]);
  const order = isHeaded ? swapQuestion(numbers, system) : orderQuestion(numbers, system);
  const heights = heightsIn(layout, system, answers);
  const questions: readonly (Question | null)[] = [
    system === null ? systemQuestion(numbers) : null,
    answers.isSwapped === null && order !== "no" && order !== "yes" ? order : null,
    heights === "asked" ? unitQuestion : null,
  ];
  const findings: readonly Finding[] = stated?.findings ?? [];
  return success(
    {
      system,
      isSwapped: answers.isSwapped ?? order === "yes",
      height_m: heights === "asked" ? null : heights,
      questions: questions.flatMap((each) => (each === null ? [] : [each])),
    },
    findings,
  );
}

/** Degrees on WGS 84 where heads or numbers leave no doubt; null else. */
function degreesBy({ place, headLine }: TableLayout, numbers: TableNumbers): CoordinateSystem | null {
  const { east, north, decimals } = numbers;
  const isInRange = (north <= 90 && east <= 180) || (east <= 90 && north <= 180);
  if (!isInRange) return null;
  if (place.kind === "wkt") return decimals >= decimalsOfDegrees ? lonLatSystem : null;
  if (place.of === "degrees" && headLine > 0) return lonLatSystem;
  return place.of !== "lengths" && decimals >= decimalsOfDegrees ? lonLatSystem : null;
}

/** Latitudes beyond 90 prove that columns are headed the wrong way round; whether all are is asked. */
function swapQuestion({ north }: TableNumbers, system: CoordinateSystem | null): Question | "no" {
  if (system?.kind !== "geographic" || north <= 90) return "no";
  return {
    about: "order",
    asked: say`Some latitudes are beyond 90. Do longitude and latitude stand the wrong way round?`,
    offered: [
      { value: "yes", told: say`Yes: what is headed latitude is the longitude (up to ${String(north)}).` },
      { value: "no", told: say`No: those lines are wrong and are left out.` },
    ],
  };
}

/** Without heads which of two numbers is which is asked, unless one of them can be no latitude. */
function orderQuestion({ east, north }: TableNumbers, system: CoordinateSystem | null): Question | "no" | "yes" {
  if (system?.kind === "geographic") {
    if (east > 90 && north <= 90) return "no";
    if (north > 90 && east <= 90) return "yes";
    return {
      about: "order",
      asked: say`The file has no heads. Which number comes first?`,
      offered: [
        { value: "no", told: say`Latitude, then longitude.` },
        { value: "yes", told: say`Longitude, then latitude.` },
      ],
    };
  }
  return {
    about: "order",
    asked: say`The file has no heads. Which number comes first?`,
    offered: [
      { value: "no", told: say`Northing, then easting (up to ${String(north)}, then up to ${String(east)}).` },
      { value: "yes", told: say`Easting, then northing.` },
    ],
  };
}

function systemQuestion({ east, north }: TableNumbers): Question {
  const isInRange = (north <= 90 && east <= 180) || (east <= 90 && north <= 180);
  return {
    about: "system",
    asked: say`In which coordinate system are the numbers (up to ${String(east)} east, ${String(north)} north)?`,
    offered: isInRange ? [{ value: "EPSG:4326", told: say`Degrees of longitude and latitude, WGS 84.` }] : [],
  };
}

const unitQuestion: Question = {
  about: "unit",
  asked: say`What are the heights counted in? Their column does not say.`,
  offered: [
    { value: "ft", told: say`International feet (0.3048 m).` },
    { value: "us-ft", told: say`US survey feet (1200/3937 m).` },
    { value: "m", told: say`Metres.` },
  ],
};

/** Heights without a unit count metres where everything else does; where it counts feet, which is asked, and beside degrees nothing says it. */
function heightsIn(
  { place }: TableLayout,
  system: CoordinateSystem | null,
  { unit }: ReadingAnswers,
): number | null | "asked" {
  const pairs = place.kind === "pairs" ? place.pairs : [];
  if (!pairs.some(({ height }) => height !== null && height.unit === null)) return null;
  if (unit !== null) return unitLength_m[unit];
  if (system === null || system.unit === "deg") return null;
  return system.unit === "m" ? 1 : "asked";
}

/** "ft" in a head is said of both feet. */
function isSameUnit(unit: Exclude<HeadUnit, null>, system: CoordinateSystem): boolean {
  if (system.unit === "deg") return false;
  return unit === system.unit || (unit === "ft" && system.unit === "us-ft");
}
