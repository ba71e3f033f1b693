import { batch, effect } from "@preact/signals";
import type { RouteJob } from "../../core/mainline/route-job.ts";
import { isSameRouteJob } from "../../core/mainline/same-route-job.ts";
import type { Store } from "../store.ts";
import { areRowsHeld } from "./are-rows-held.ts";
import type { RouteAnswer, RouteWorker, StartRouteWorker } from "./route-messages.ts";
import { createRoutes } from "./routes.ts";

/** A worker that has been busy this long with what is no longer shown is given up for a new one. */
const patience_ms = 400;

/**
 * Gives the page's plan its main line: whenever a route is wanted that is not known, a worker is asked, one question at a time, the newest
 * first. While rows are held no route is wanted; while a main line or a source is held it follows at the pace of the worker.
 */
export function followWithRoutes(store: Store, startWorker: StartRouteWorker): () => void {
  const routes = createRoutes();
  let worker: RouteWorker | null = null;
  let asked: { readonly job: RouteJob; readonly number: number; readonly at_ms: number } | null = null;
  let number = 0;

  store.mainWorksOf.value = (project) => (areRowsHeld(store, project) ? null : routes.works.value);

  const tell = (answer: RouteAnswer): void => {
    if (answer.number !== asked?.number) return;
    const { job } = asked;
    asked = null;
    // What is shown is planned anew, and the newest question is asked then.
    batch(() => routes.learn(job, answer.route));
  };

  const stop = effect(() => {
    const [plan, isHeld] = [store.plan.value, store.drafting.value];
    const job = plan?.mainline?.job ?? null;
    const isWanted = job !== null && !routes.knows(job);
    const waits = plan !== null && areRowsHeld(store, plan.project) && plan.project.sources.length > 0;
    store.routeState.value = waits ? "waiting" : isWanted ? "asked" : "laid";
    if (!isWanted) return;
    if (asked !== null) {
      if (isHeld || isSameRouteJob(asked.job, job) || performance.now() - asked.at_ms < patience_ms) return;
      worker?.end();
      worker = null;
    }
    worker ??= startWorker(tell);
    asked = { job, number: ++number, at_ms: performance.now() };
    worker.ask({ number, job });
  });
  return () => {
    stop();
    store.mainWorksOf.value = () => null;
    worker?.end();
    worker = null;
    asked = null;
  };
}
