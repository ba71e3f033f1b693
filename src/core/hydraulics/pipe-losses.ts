import { type Bore, boreOf } from "./bore.ts";
import { leastInside_mm } from "./least-inside.ts";
import { pipeLoss } from "./pipe-loss.ts";
import type { SizingJob } from "./sizing-job.ts";

/** Head that each pipe of a tree loses at each size, and which sizes it may have. */
export interface PipeLosses {
  /** By pipe, then by size. */
  readonly loss_m: Float64Array;
  /** Index of the smallest size each pipe may have; the number of sizes where none is wide enough. */
  readonly least: Uint8Array;
}

/** Losses of every pipe at every size, m, and the smallest size that keeps the velocity cap and what is asked for at least. */
export function pipeLosses(job: SizingJob): PipeLosses {
  const { sizes, length_m, flow_lps } = job;
  const bores = sizes.map(({ inside_mm }) => boreOf({ ...job, inside_mm }));
  const loss_m = new Float64Array(length_m.length * sizes.length);
  const least = new Uint8Array(length_m.length);
  const lost = new Float64Array(2);
  for (let pipe = 0; pipe < length_m.length; pipe++) {
    const flow = Number(flow_lps[pipe]);
    const narrowest_mm = leastInside_mm(flow, job.mostVelocity_mps) * (1 - 1e-12);
    const smallest = job.least?.[pipe] ?? 0;
    let from = sizes.length;
    for (let d = sizes.length - 1; d >= smallest && Number(sizes[d]?.inside_mm) >= narrowest_mm; d--) {
      loss_m[pipe * sizes.length + d] = lossIn(bores[d], Number(length_m[pipe]), flow, lost);
      from = d;
    }
    least[pipe] = from;
  }
  return { loss_m, least };
}

function lossIn(bore: Bore | undefined, length_m: number, flow_lps: number, lost: Float64Array): number {
  if (bore !== undefined) pipeLoss(bore, length_m, flow_lps, lost);
  return Number(lost[0]);
}
