import type { Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";

/** What the page asks its worker. */
export interface WateringQuestion {
  readonly number: number;
  readonly job: WateringJob;
}

/** What the worker answers to the question of the same number; null where nothing came of it. */
export interface WateringAnswer {
  readonly number: number;
  readonly watering: Watering | null;
}

/** Someone to ask, one question after another. */
export interface WateringWorker {
  ask(question: WateringQuestion): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** Starts a worker that tells its answers. */
export type StartWateringWorker = (tell: (answer: WateringAnswer) => void) => WateringWorker;
