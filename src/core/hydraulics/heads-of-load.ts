import type { LoadJob, LoadsJob } from "./loads-job.ts";
import { pipeLosses } from "./pipe-losses.ts";

/** Rounding of sums of heads. */
const dust_m = 1e-6;

/** Heads of one load with sizes as they are, and whether something it wants is not there: head, or a velocity under the cap. */
export function headsOfLoad(
  { upstream, sizes }: LoadsJob,
  { pipes, job }: LoadJob,
  size: Uint8Array,
): { readonly head_m: Float64Array; readonly isShort: boolean } {
  const { loss_m } = pipeLosses({ ...job, mostVelocity_mps: Infinity, least: null });
  const allowed = pipeLosses({ ...job, least: null }).least;
  const head_m = new Float64Array(upstream.length).fill(Number.NaN);
  let isShort = false;
  for (const [i, pipe] of pipes.entries()) {
    const up = Number(upstream[pipe]);
    const own = Number(size[pipe]);
    const at_m = (up < 0 ? job.source_m : Number(head_m[up])) - Number(loss_m[i * sizes.length + own]);
    head_m[pipe] = at_m;
    if (at_m < Number(job.wanted_m[i]) - dust_m || own < Number(allowed[i])) isShort = true;
  }
  return { head_m, isShort };
}
