import type { Route } from "../../core/mainline/route.ts";
import type { RouteJob } from "../../core/mainline/route-job.ts";

/** What the page asks its worker. */
export interface RouteQuestion {
  readonly number: number;
  readonly job: RouteJob;
}

/** What the worker answers to the question of the same number; null where no route came of it. */
export interface RouteAnswer {
  readonly number: number;
  readonly route: Route | null;
}

/** Someone to ask, one question after another. */
export interface RouteWorker {
  ask(question: RouteQuestion): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** Starts a worker that tells its answers. */
export type StartRouteWorker = (tell: (answer: RouteAnswer) => void) => RouteWorker;
