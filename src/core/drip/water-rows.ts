import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What the drip system does with the water there is: supply, sets, pipe sizes, pressures, season. */
export function waterRows(_job: WateringJob): Watering | null {
  return null;
}
