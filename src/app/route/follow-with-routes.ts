import { batch, effect } from "@preact/signals";
import { isSameRouteJob } from "../../core/mainline/same-route-job.ts";
import { newestFirst } from "../newest-first.ts";
import type { Store } from "../store.ts";
import { areRowsHeld } from "./are-rows-held.ts";
import type { StartRouteWorker } from "./route-messages.ts";
import { createRoutes } from "./routes.ts";

/**
 * Gives the page's plan its main line: whenever a route is wanted that is not known, a worker is asked. While rows are held no route is wanted; while a
 * main line or a source is held it follows at the pace of the worker.
 */
export function followWithRoutes(store: Store, startWorker: StartRouteWorker): () => void {
  const routes = createRoutes();
  const worker = newestFirst(startWorker, isSameRouteJob, (job, { route }) => batch(() => routes.learn(job, route)));
  store.mainWorksOf.value = (project) => (areRowsHeld(store, project) ? null : routes.works.value);

  const stop = effect(() => {
    const [plan, isHeld] = [store.plan.value, store.drafting.value];
    const job = plan?.mainline?.job ?? null;
    const isWanted = job !== null && !routes.knows(job);
    const waits = plan !== null && areRowsHeld(store, plan.project) && plan.project.sources.length > 0;
    store.routeState.value = waits ? "waiting" : isWanted ? "asked" : "laid";
    if (isWanted) worker.want(job, isHeld);
  });
  return () => {
    stop();
    store.mainWorksOf.value = () => null;
    worker.end();
  };
}
