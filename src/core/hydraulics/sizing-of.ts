import type { PipeLosses } from "./pipe-losses.ts";
import type { Sizing, SizingJob } from "./sizing-job.ts";

/** Rounding of sums of heads. */
export const dust_m = 1e-9;

/** What sizes come to. */
export function sizingOf(
  { upstream, length_m, sizes, source_m }: SizingJob,
  { loss_m }: PipeLosses,
  size: Uint8Array,
): Sizing {
  const head_m = new Float64Array(upstream.length);
  let cost = 0;
  for (let pipe = 0; pipe < upstream.length; pipe++) {
    const up = Number(upstream[pipe]);
    const own = Number(size[pipe]);
    head_m[pipe] = (up < 0 ? source_m : Number(head_m[up])) - Number(loss_m[pipe * sizes.length + own]);
    cost += Number(length_m[pipe]) * (sizes[own]?.cost_pm ?? 0);
  }
  return { size, cost, head_m };
}
