import { localSystem } from "../systems/local-system.ts";
import type { HandOverJob } from "./format.ts";

/**
 * The job with a system that counts lengths: the one that was chosen, or the local plane of the project where that one counts degrees.
 * For formats that drawing and digging programs read, which take every number for a length.
 */
export function metricJob(job: HandOverJob): HandOverJob {
  const { ground } = job.plan;
  if (job.system.kind !== "geographic" || ground === null) return job;
  return { ...job, system: localSystem(ground.frame, job.choice.unit) };
}
