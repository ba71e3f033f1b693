import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { type WateringInput, wateringJob } from "./job-of-rows.ts";
import type { Watering, WateringOf } from "./watering.ts";
import { wateringFindings } from "./watering-findings.ts";
import type { WateringJob } from "./watering-job.ts";

/** The watering with what it was worked out from. */
export interface Watered {
  readonly job: WateringJob;
  /** null while it is not worked out. */
  readonly watering: Watering | null;
}

/** The stage, apart from the others so that a page may load it late. */
export type WateringStage = (
  rows: Rows,
  main: Mainline,
  ground: Ground,
  trellis: Trellis,
  project: WateringInput,
) => Outcome<Watered>;

/** What the water there is does for the rows, worked out in the given way. Findings: see `wateringFindings`. */
export function createWateringStage(wateringOf: WateringOf): WateringStage {
  return (rows, main, ground, trellis, project) => {
    const job = wateringJob(rows, main, ground, trellis, project);
    const watering = wateringOf(job);
    return success({ job, watering }, wateringFindings(job, watering, rows, main, ground));
  };
}
