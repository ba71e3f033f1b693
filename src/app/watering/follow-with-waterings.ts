import { effect } from "@preact/signals";
import { isSameWateringJob } from "../../core/drip/same-watering-job.ts";
import { newestFirst } from "../newest-first.ts";
import { areRowsHeld } from "../route/are-rows-held.ts";
import type { Store } from "../store.ts";
import type { StartWateringWorker } from "./watering-messages.ts";
import { createWaterings } from "./waterings.ts";

/**
 * Gives the page's plan its watering: small fields on the spot; whenever a large one is wanted that is not known, a worker is asked. While rows are held
 * none is wanted.
 */
export function followWithWaterings(store: Store, startWorker: StartWateringWorker): () => void {
  const waterings = createWaterings();
  const worker = newestFirst(startWorker, isSameWateringJob, (job, { watering }) => waterings.learn(job, watering));
  store.wateringStageOf.value = (project) => (areRowsHeld(store, project) ? null : waterings.stage.value);

  const stop = effect(() => {
    const [plan, isHeld] = [store.plan.value, store.drafting.value];
    const job = plan?.watering?.job ?? null;
    const isWanted = job !== null && !waterings.knows(job);
    store.isWateringAsked.value = isWanted;
    if (isWanted) worker.want(job, isHeld);
  });
  return () => {
    stop();
    store.wateringStageOf.value = () => null;
    worker.end();
  };
}
