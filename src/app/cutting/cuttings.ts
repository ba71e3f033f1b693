import { type ReadonlySignal, signal } from "@preact/signals";
import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { CutPlan } from "../../core/materials/cutting/cut-plan.ts";
import { isSameJob } from "../../core/materials/cutting/same-job.ts";
import type { CutOf } from "../../core/materials/materials.ts";

interface KnownCut {
  readonly job: CutJob;
  readonly plan: CutPlan;
}

/** The cutting plans that have been worked out, for the planner; those that are not are worked out elsewhere and learned. */
export interface Cuttings {
  /** The plan of a job when it is known, else null; another function whenever more is known, so that coils are counted anew. */
  readonly of: ReadonlySignal<CutOf>;
  learn(jobs: readonly CutJob[], plans: readonly CutPlan[]): void;
}

/** As many answers are kept: taking an edit back finds its own again. */
const mostKnown = 24;

/** Nothing known yet. */
export function createCuttings(): Cuttings {
  let known: readonly KnownCut[] = [];
  const cutOf = (): CutOf => {
    const now = known;
    return (job) => now.find((each) => isSameJob(each.job, job))?.plan ?? null;
  };
  const of = signal(cutOf());
  return {
    of,
    learn: (jobs, plans) => {
      const learned = jobs.flatMap((job, i) => {
        const plan = plans[i];
        return plan === undefined ? [] : [{ job, plan }];
      });
      known = [...learned, ...known].slice(0, mostKnown);
      of.value = cutOf();
    },
  };
}
