import { holdTheSame } from "../identity.ts";
import type { WateringJob } from "./watering-job.ts";

/** Do two jobs ask for the same watering? Told by what they hold, so that an edit taken back finds its watering again. */
export function isSameWateringJob(one: WateringJob, other: WateringJob): boolean {
  return holdTheSame(one, other);
}
