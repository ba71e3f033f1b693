import { cheapestSizing } from "./cheapest-sizing.ts";
import { type PipeLosses, pipeLosses } from "./pipe-losses.ts";
import { relaxedSizes } from "./relaxed-sizes.ts";
import type { Sizing, SizingJob } from "./sizing-job.ts";
import { dust_m, sizingOf } from "./sizing-of.ts";

/**
 * Heads that are kept of a front: few first, for a cost that sorts out what can not be cheaper, then more as long as something was left out. What is
 * left out at last is some millionths of the cost of a tree of 400 tees.
 */
const usualFineness = [50, 400, 2000];

/**
 * The cheapest sizes that give every place its head within the velocity cap; null where even the widest do not. From the far ends up, by pipe and
 * size, what all below costs by the head at hand; then down again with the head there is. What is dominated is dropped, and what can be no part of a
 * tree as cheap as one that is known (see `relaxedSizes`).
 */
export function sizePipes(job: SizingJob, fineness: readonly number[] = usualFineness): Sizing | null {
  const losses = pipeLosses(job);
  const highest_m = highestHeads(job, losses);
  const isServed = (each_m: number, pipe: number) => each_m >= Number(job.wanted_m[pipe]) - dust_m;
  if (losses.least.some((least) => least >= job.sizes.length) || !highest_m.every(isServed)) return null;
  const smallest = sizingOf(job, losses, smallestSizes(job, losses));
  if (isDearerByWidth(job) && smallest.head_m.every(isServed)) return smallest;
  const relaxed = relaxedSizes(job, losses);
  let known = sizingOf(job, losses, relaxed.size);
  for (const most of fineness) {
    const { sizing, isExact } = cheapestSizing(job, losses, highest_m, relaxed, known.cost, most);
    if (sizing !== null && sizing.cost < known.cost) known = sizing;
    if (isExact) break;
  }
  return known;
}

/** The smallest size that each pipe may have, no pipe wider than the one it goes on from where that is asked for. */
function smallestSizes({ upstream, isTapering }: SizingJob, { least }: PipeLosses): Uint8Array {
  const size = least.slice();
  if (isTapering) {
    for (let pipe = size.length - 1; pipe > 0; pipe--) {
      const up = Number(upstream[pipe]);
      if (up >= 0) size[up] = Math.max(Number(size[up]), Number(size[pipe]));
    }
  }
  return size;
}

function isDearerByWidth({ sizes }: SizingJob): boolean {
  return sizes.every(({ cost_pm }, d) => d === 0 || cost_pm >= Number(sizes[d - 1]?.cost_pm));
}

/** Total head at the downstream end of each pipe with everything on the way as wide as there is. */
function highestHeads(job: SizingJob, losses: PipeLosses): Float64Array {
  return sizingOf(job, losses, new Uint8Array(job.upstream.length).fill(job.sizes.length - 1)).head_m;
}
