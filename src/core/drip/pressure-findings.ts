import { type Finding, listed, type Phrase, quantity, say, unplaced } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { rise_kpa } from "../hydraulics/surge.ts";
import { pipeRating } from "./pipe-in-words.ts";
import { leastRegulator_kpa } from "./regulator-hint.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Where things are and what rows are called. */
export interface Whereabouts {
  placeOf(point: number): Finding["at"];
  /** Name of the row of a lateral. */
  rowOf(lateral: number): string;
}

/**
 * What stands less than it has to. Findings: drip/pipe-over-pressure, drip/surge-over-pressure, drip/hose-over-pressure, drip/emitter-over-pressure,
 * drip/pipe-rating-not-known.
 */
export function pressureFindings(job: WateringJob, watering: Watering, where: Whereabouts): readonly Finding[] {
  const over = (what: HighestPressure["what"], isSurge: boolean) =>
    watering.highest
      .filter((each) => each.what === what && (each.when === "surge") === isSurge && each.pressure_kpa > each.most_kpa)
      .sort((a, b) => b.pressure_kpa - b.most_kpa - (a.pressure_kpa - a.most_kpa))[0];
  const pipe = over("pipe", false);
  const surge = over("pipe", true);
  const hose = over("hose", false);
  const emitter = over("emitter", false);
  return [
    ...(pipe === undefined ? [] : [pipeOver(job, watering, pipe, where)]),
    ...(surge === undefined || pipe?.when === "closed" ? [] : [surgeOver(job, watering, surge, where)]),
    ...(hose === undefined ? [] : [inRowOver(job, watering, hose, where, emitter?.lateral === hose.lateral)]),
    ...(emitter === undefined || emitter.lateral === hose?.lateral
      ? []
      : [inRowOver(job, watering, emitter, where, true)]),
    ...unknownRatings(watering),
  ];
}

function placed(at: Finding["at"], of: Finding): Finding {
  return { ...of, at };
}

function pipeOver(job: WateringJob, watering: Watering, worst: HighestPressure, where: Whereabouts): Finding {
  const left_kpa = worst.most_kpa - pressureOf_kpa(job.source.height_m - worst.height_m);
  const [name, rated] = pipeRating(watering, worst.pipe, job.water.temperature_c);
  return placed(
    where.placeOf(worst.point),
    unplaced(
      "drip/pipe-over-pressure",
      "warning",
      [
        ...name,
        ...say` has to stand ${quantity("pressure", worst.pressure_kpa)} ${worst.when === "closed" ? "when every valve is closed" : "while a set runs"}, and stands `,
        ...rated,
        ".",
      ],
      say`Pipe that is pressed beyond its rating bursts, at once or after some years, and throws earth and splinters.`,
      left_kpa > 0
        ? say`Put a regulator of at most ${quantity("pressure", left_kpa)} among the head works, or choose pipe with a higher rating.`
        : say`Choose pipe with a higher rating; water runs down so far here that a regulator at the source is not enough. Have it looked at by someone licensed.`,
    ),
  );
}

function surgeOver(job: WateringJob, watering: Watering, worst: HighestPressure, where: Whereabouts): Finding {
  const { surge } = worst;
  const rise = surge === null ? 0 : rise_kpa(surge);
  const room_kpa = worst.most_kpa - (worst.pressure_kpa - rise);
  const closing_h = room_kpa > 0 && surge !== null ? (job.water.closing_h * surge.slow_kpa) / room_kpa : null;
  const [name, rated] = pipeRating(watering, worst.pipe, job.water.temperature_c);
  return placed(
    where.placeOf(worst.point),
    unplaced(
      "drip/surge-over-pressure",
      "warning",
      [
        ...say`A valve that closes within ${quantity("time", job.water.closing_h)} raises the pressure in `,
        ...lowerFirst(name),
        ...say` by ${quantity("pressure", rise)} to ${quantity("pressure", worst.pressure_kpa)}; it stands `,
        ...rated,
        ".",
      ],
      say`Water that is stopped hits the pipe. Joints loosen after many such blows.`,
      closing_h === null || closing_h <= 0 || closing_h === Infinity
        ? say`Close valves slowly, and choose pipe with a higher rating or a wider one.`
        : say`Close valves over ${quantity("time", closing_h)} or more, or choose wider pipe or pipe with a higher rating.`,
    ),
  );
}

/** One finding where hose and emitters of one row stand too little. */
function inRowOver(
  job: WateringJob,
  watering: Watering,
  worst: HighestPressure,
  where: Whereabouts,
  isEmitterToo: boolean,
): Finding {
  const isHose = worst.what === "hose";
  const named = isHose ? (isEmitterToo ? "Hose and emitters" : "Hose") : "Emitters";
  const isOne = named === "Hose";
  const most_kpa = Math.min(
    worst.most_kpa,
    ...watering.highest.flatMap((each) =>
      isEmitterToo && each.what === "emitter" && each.lateral === worst.lateral ? [each.most_kpa] : [],
    ),
  );
  return placed(
    where.placeOf(worst.point),
    unplaced(
      isHose ? "drip/hose-over-pressure" : "drip/emitter-over-pressure",
      "warning",
      say`${named} of row ${where.rowOf(worst.lateral)} ${isOne ? "has" : "have"} to stand ${quantity("pressure", worst.pressure_kpa)}${worst.when === "closed" ? " when the row runs alone" : ""}, and ${isOne ? "stands" : "stand"} ${quantity("pressure", most_kpa)}.`,
      [
        ...(isHose ? say`Hose slips off its fittings, and in the sun it is weaker still.` : []),
        ...(isEmitterToo
          ? say`${isHose ? " " : ""}Above its range an emitter no longer holds its flow, and punched ones are pushed out of the hose.`
          : []),
      ],
      remedyInRow(job, watering, { ...worst, most_kpa }),
    ),
  );
}

function remedyInRow(job: WateringJob, watering: Watering, worst: HighestPressure): Phrase {
  const needed_kpa = leastRegulator_kpa(job, watering);
  const place = job.sets.pattern === "cock-a-row" ? "at every row's cock" : "at every set's valve";
  const fall_kpa = pressureOf_kpa(Math.max(0, heightOfTee(job, worst) - worst.height_m));
  if (needed_kpa === null || needed_kpa + fall_kpa > worst.most_kpa) {
    return say`A regulator ${place} alone is not enough: rows that need much and rows that lie low hang on the same pressure. Put them in sets of their own, or choose hose and emitters that stand more.`;
  }
  const { regulator_kpa } = job.sets;
  return regulator_kpa === null
    ? say`Put a regulator ${place}: from ${quantity("pressure", needed_kpa)} on every row has what it needs, and ${quantity("pressure", worst.most_kpa - fall_kpa)} is the most.`
    : say`Set the regulator ${place} lower: from ${quantity("pressure", needed_kpa)} on every row has what it needs, and ${quantity("pressure", worst.most_kpa - fall_kpa)} is the most.`;
}

function heightOfTee({ line }: WateringJob, { point, height_m }: HighestPressure): number {
  return line?.height_m[point] ?? height_m;
}

function lowerFirst([first = "", ...others]: Phrase): Phrase {
  return typeof first === "string" ? [first.replace(/^Pipe/, "pipe"), ...others] : [first, ...others];
}

/** Pipe of the person's own: nothing says what it stands. */
function unknownRatings({ pipes, highest }: Watering): readonly Finding[] {
  const judged = new Set(highest.map(({ pipe }) => pipe));
  const names = [...new Set(pipes.flatMap(({ pipe }, i) => (judged.has(i) ? [] : [pipe.size])))];
  if (names.length === 0 || highest.length === 0) return [];
  return [
    unplaced(
      "drip/pipe-rating-not-known",
      "note",
      say`Nobody has said what pressure pipe ${listed(names)} stands.`,
      say`So the highest pressure in it is not held against anything.`,
      say`Read it off the pipe, for the temperature of the water, and see that it is above the supply's highest pressure; or choose a size of the table.`,
    ),
  ];
}
