import { effect } from "@preact/signals";
import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { Store } from "../store.ts";
import type { CuttingAnswer, CuttingWorker, StartCuttingWorker } from "./cutting-messages.ts";

/**
 * Keeps the cutting plans up to date: whenever a plan is shown whose coils are only counted by length, a worker is asked, one question at a
 * time and never while something is held. What is no longer shown when it is answered is kept all the same, and the newest is asked then.
 */
export function followWithCutting(store: Store, startWorker: StartCuttingWorker): () => void {
  let worker: CuttingWorker | null = null;
  let asked: { readonly jobs: readonly CutJob[]; readonly number: number } | null = null;
  let number = 0;

  const tell = (answer: CuttingAnswer): void => {
    if (answer.number !== asked?.number) return;
    const { jobs } = asked;
    asked = null;
    store.cuttings.learn(jobs, answer.plans);
  };

  const stop = effect(() => {
    const coils = store.plan.value?.materials?.coils ?? [];
    const jobs = coils.flatMap(({ job, plan }) => (plan === null ? [job] : []));
    if (store.drafting.value || jobs.length === 0 || asked !== null) return;
    worker ??= startWorker(tell);
    asked = { jobs, number: ++number };
    worker.ask({ number, jobs });
  });
  return () => {
    stop();
    worker?.end();
    worker = null;
    asked = null;
  };
}
