import type { Advice } from "../../core/drip/advice.ts";
import type { Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";

/** What the step asks its worker. */
export interface AdviceQuestion {
  readonly job: WateringJob;
  readonly watering: Watering;
}

/** What it answers. */
export interface AdviceAnswer {
  readonly advice: readonly Advice[];
}
