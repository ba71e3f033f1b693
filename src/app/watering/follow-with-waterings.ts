import { effect } from "@preact/signals";
import { isSameWateringJob } from "../../core/drip/same-watering-job.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { areRowsHeld } from "../route/are-rows-held.ts";
import type { Store } from "../store.ts";
import type { StartWateringWorker, WateringAnswer, WateringWorker } from "./watering-messages.ts";
import { createWaterings } from "./waterings.ts";

/** A worker that has been busy this long with what is no longer shown is given up for a new one. */
const patience_ms = 400;

/**
 * Gives the page's plan its watering: small fields on the spot; whenever a large one is wanted that is not known, a worker is asked, one
 * question at a time, the newest first. While rows are held none is wanted.
 */
export function followWithWaterings(store: Store, startWorker: StartWateringWorker): () => void {
  const waterings = createWaterings();
  let worker: WateringWorker | null = null;
  let asked: { readonly job: WateringJob; readonly number: number; readonly at_ms: number } | null = null;
  let number = 0;
  store.wateringStageOf.value = (project) => (areRowsHeld(store, project) ? null : waterings.stage.value);

  const tell = (answer: WateringAnswer): void => {
    if (answer.number !== asked?.number) return;
    const { job } = asked;
    asked = null;
    waterings.learn(job, answer.watering);
  };

  const stop = effect(() => {
    const [plan, isHeld] = [store.plan.value, store.drafting.value];
    const job = plan?.watering?.job ?? null;
    const isWanted = job !== null && !waterings.knows(job);
    store.isWateringAsked.value = isWanted;
    if (!isWanted) return;
    if (asked !== null) {
      if (isHeld || isSameWateringJob(asked.job, job) || performance.now() - asked.at_ms < patience_ms) return;
      worker?.end();
      worker = null;
    }
    worker ??= startWorker(tell);
    asked = { job, number: ++number, at_ms: performance.now() };
    worker.ask({ number, job });
  });
  return () => {
    stop();
    store.wateringStageOf.value = () => null;
    worker?.end();
    worker = null;
    asked = null;
  };
}
