import { type Finding, type Phrase, quantity, say, unplaced } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { rise_kpa } from "../hydraulics/surge.ts";
import { pipeRating } from "./pipe-in-words.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";
import type { Whereabouts } from "./whereabouts.ts";

/** Pipe that has to stand more than its rating, valves closed or while a set runs. */
export function pipeOver(job: WateringJob, watering: Watering, worst: HighestPressure, where: Whereabouts): Finding {
  const left_kpa = worst.most_kpa - pressureOf_kpa(job.source.height_m - worst.height_m);
  const [name, rated] = pipeRating(watering, worst.pipe, job.water.temperature_c);
  return {
    ...unplaced(
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
    at: where.placeOf(worst.point),
  };
}

/** Pipe that a closing valve presses beyond its rating. */
export function surgeOver(job: WateringJob, watering: Watering, worst: HighestPressure, where: Whereabouts): Finding {
  const { surge } = worst;
  const rise = surge === null ? 0 : rise_kpa(surge);
  const room_kpa = worst.most_kpa - (worst.pressure_kpa - rise);
  const closing_h = room_kpa > 0 && surge !== null ? (job.water.closing_h * surge.slow_kpa) / room_kpa : null;
  const [name, rated] = pipeRating(watering, worst.pipe, job.water.temperature_c);
  return {
    ...unplaced(
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
    at: where.placeOf(worst.point),
  };
}

function lowerFirst([first = "", ...others]: Phrase): Phrase {
  return typeof first === "string" ? [first.replace(/^Pipe/, "pipe"), ...others] : [first, ...others];
}
