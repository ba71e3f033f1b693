import { type ReadonlySignal, signal } from "@preact/signals";
import { createMainWorks, type MainWorks } from "../../core/main-works.ts";
import type { Route } from "../../core/mainline/route.ts";
import type { RouteJob } from "../../core/mainline/route-job.ts";
import { isSameRouteJob } from "../../core/mainline/same-route-job.ts";

interface KnownRoute {
  readonly job: RouteJob;
  /** null: no route came of it. */
  readonly route: Route | null;
}

/** The routes that have been laid, for the planner; those that are not are laid elsewhere and learned. */
export interface Routes {
  /** The stages of the main line with what is known; others whenever more is known, so that the plan is made anew. */
  readonly works: ReadonlySignal<MainWorks>;
  /** Has the job been answered, be it without a route? */
  knows(job: RouteJob): boolean;
  learn(job: RouteJob, route: Route | null): void;
}

/** As many answers are kept: taking an edit back finds its own again. */
const mostKnown = 24;

/** Nothing known yet. */
export function createRoutes(): Routes {
  let known: readonly KnownRoute[] = [];
  const find = (job: RouteJob) => known.find((each) => isSameRouteJob(each.job, job));
  // A route that is being laid anew stands in as it was, as long as it still fits the rows; the page says so.
  const standIn = (job: RouteJob): Route | null => {
    const [last] = known;
    return last !== undefined && isAlike(last.job, job) ? last.route : null;
  };
  const worksNow = (): MainWorks =>
    createMainWorks((job) => {
      const found = find(job);
      return found === undefined ? standIn(job) : found.route;
    });
  const works = signal(worksNow());
  return {
    works,
    knows: (job) => find(job) !== undefined,
    learn: (job, route) => {
      known = [{ job, route }, ...known].slice(0, mostKnown);
      works.value = worksNow();
    },
  };
}

/** Do the numbers that a route holds mean the same in both jobs: rows at their places, sources and what is crossed in their order? */
function isAlike(one: RouteJob, other: RouteJob): boolean {
  const names = (job: RouteJob): string =>
    JSON.stringify([job.sources.map(({ feature }) => feature), job.barriers.features.map(({ key }) => key)]);
  const [mine, theirs] = [one.rows.posts, other.rows.posts];
  return mine.length === theirs.length && mine.every((each, i) => each === theirs[i]) && names(one) === names(other);
}
