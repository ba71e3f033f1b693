import { type Finding, listed, say, unplaced } from "../finding.ts";
import { pipeOver, surgeOver } from "./pipe-over-pressure.ts";
import { inRowOver } from "./row-over-pressure.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";
import type { Whereabouts } from "./whereabouts.ts";

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
