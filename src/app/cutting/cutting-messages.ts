import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { CutPlan } from "../../core/materials/cutting/cut-plan.ts";

/** What the page asks its worker. */
export interface CuttingQuestion {
  readonly number: number;
  readonly jobs: readonly CutJob[];
}

/** What the worker answers to the question of the same number: a plan a job. */
export interface CuttingAnswer {
  readonly number: number;
  readonly plans: readonly CutPlan[];
}

/** Someone to ask, one question after another. */
export interface CuttingWorker {
  ask(question: CuttingQuestion): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** Starts a worker that tells its answers. */
export type StartCuttingWorker = (tell: (answer: CuttingAnswer) => void) => CuttingWorker;
