import type { Finding } from "../finding.ts";
import type { WateringJob } from "./watering-job.ts";

/** What is odd about the water as it is stated, with the suspected cause. */
export function supplyFindings(_job: WateringJob): readonly Finding[] {
  return [];
}
