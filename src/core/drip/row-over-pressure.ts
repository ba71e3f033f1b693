import { type Finding, type Phrase, quantity, say, unplaced } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { leastRegulator_kpa } from "./regulator-hint.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";
import type { Whereabouts } from "./whereabouts.ts";

/** One finding where hose and emitters of one row stand too little. */
export function inRowOver(
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
  return {
    ...unplaced(
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
    at: where.placeOf(worst.point),
  };
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
