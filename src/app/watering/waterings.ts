import { type ReadonlySignal, signal } from "@preact/signals";
import { isSameWateringJob } from "../../core/drip/same-watering-job.ts";
import { waterRows } from "../../core/drip/water-rows.ts";
import type { Watering } from "../../core/drip/watering.ts";
import type { WateringJob } from "../../core/drip/watering-job.ts";
import { createWateringStage, type WateringStage } from "../../core/drip/watering-stage.ts";

interface KnownWatering {
  readonly job: WateringJob;
  readonly watering: Watering | null;
}

/** The waterings that have been worked out, for the planner; small ones on the spot, large ones elsewhere and learned. */
export interface Waterings {
  /** The stage with what is known; another whenever more is known, so that the plan is made anew. */
  readonly stage: ReadonlySignal<WateringStage>;
  /** Has the job been answered? */
  knows(job: WateringJob): boolean;
  learn(job: WateringJob, watering: Watering | null): void;
}

/** As many answers are kept: taking an edit back finds its own again. */
const mostKnown = 8;
/** Up to so many emitters are worked out on the spot, in a frame or two: an answer by messages would come later than that. */
const mostAtOnce = 5000;

/** Nothing known yet. */
export function createWaterings(): Waterings {
  let known: readonly KnownWatering[] = [];
  const find = (job: WateringJob) => known.find((each) => isSameWateringJob(each.job, job));
  const keep = (each: KnownWatering): void => {
    known = [each, ...known].slice(0, mostKnown);
  };
  const isSmall = (job: WateringJob): boolean => job.laterals.at_m.length <= mostAtOnce;
  const atOnce = (job: WateringJob): Watering | null => {
    const watering = waterRows(job);
    keep({ job, watering });
    return watering;
  };
  // What is being worked out anew stands in as it was, as long as it still fits rows and route; the page says so.
  const standIn = (job: WateringJob): Watering | null => {
    const [last] = known;
    return last !== undefined && isAlike(last.job, job) ? last.watering : null;
  };
  const stageNow = (): WateringStage =>
    createWateringStage((job) => find(job)?.watering ?? (isSmall(job) ? atOnce(job) : standIn(job)));
  const stage = signal(stageNow());
  return {
    stage,
    knows: (job) => find(job) !== undefined,
    learn: (job, watering) => {
      keep({ job, watering });
      stage.value = stageNow();
    },
  };
}

/** Do the numbers that a watering holds mean the same in both jobs: laterals with as many emitters each, at the same points of as long a route? */
function isAlike(one: WateringJob, other: WateringJob): boolean {
  return (
    isEqual(one.laterals.row, other.laterals.row) &&
    isEqual(one.laterals.point, other.laterals.point) &&
    isEqual(one.laterals.offsets, other.laterals.offsets) &&
    one.line?.upstream.length === other.line?.upstream.length &&
    one.blocks.length === other.blocks.length
  );
}

function isEqual(one: Int32Array | Uint32Array, other: Int32Array | Uint32Array): boolean {
  return one.length === other.length && one.every((each, i) => each === other[i]);
}
