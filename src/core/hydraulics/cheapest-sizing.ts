import { type CostFront, emptyFront, frontFrom, frontSum, indexAt, lowerFront, openFront } from "./cost-front.ts";
import type { PipeLosses } from "./pipe-losses.ts";
import type { RelaxedSizes } from "./relaxed-sizes.ts";
import type { Sizing, SizingJob } from "./sizing-job.ts";
import { dust_m, sizingOf } from "./sizing-of.ts";

/** Rounding of sums of costs. */
const dust_ratio = 1e-9;

/**
 * The cheapest sizing that costs no more than a known one, with so many heads kept of each front, and whether nothing was left out; null where what was
 * left out was needed. `highest_m`: what the widest pipes leave at each place.
 */
export function cheapestSizing(
  job: SizingJob,
  losses: PipeLosses,
  highest_m: Float64Array,
  relaxed: RelaxedSizes,
  known: number,
  fineness: number,
): { readonly sizing: Sizing | null; readonly isExact: boolean } {
  const { sizes, upstream, length_m, wanted_m, isTapering } = job;
  const gap = known - relaxed.bound + dust_ratio * known;
  const count = upstream.length;
  const levels = isTapering ? sizes.length : 1;
  // By pipe and by the widest size that what goes on may have; the source comes last.
  const fronts: (CostFront | null)[] = new Array((count + 1) * levels).fill(null);
  const frontAt = (pipe: number, level: number) =>
    fronts[pipe * levels + level] ?? openFront((pipe < count ? wanted_m[pipe] : undefined) ?? -Infinity);

  for (let pipe = count - 1; pipe >= 0; pipe--) {
    const up = Number(upstream[pipe]);
    const before = up < 0 ? count : up;
    const limit = {
      highest_m: (up < 0 ? job.source_m : Number(highest_m[up])) + dust_m,
      worth: Number(relaxed.worth[pipe]),
      most: Number(relaxed.least[pipe]) + gap,
    };
    let front = emptyFront;
    for (let d = 0; d < sizes.length; d++) {
      if (d >= Number(losses.least[pipe])) {
        const step = {
          loss_m: Number(losses.loss_m[pipe * sizes.length + d]),
          cost: Number(length_m[pipe]) * (sizes[d]?.cost_pm ?? 0),
        };
        front = lowerFront(front, frontAt(pipe, isTapering ? d : 0), step, limit, fineness);
      }
      if (!isTapering && d < sizes.length - 1) continue;
      const own = before * levels + (isTapering ? d : 0);
      const beside = fronts[own] ?? null;
      const joined = beside === null ? front : frontSum(beside, front, fineness);
      fronts[own] = before < count ? frontFrom(joined, Number(wanted_m[before])) : joined;
    }
  }
  const whole = frontAt(count, levels - 1);
  const isFound = indexAt(whole, job.source_m + dust_m) >= 0;
  return {
    sizing: isFound ? sizingOf(job, losses, chosenSizes(job, losses, frontAt)) : null,
    isExact: !whole.isThinned,
  };
}

/** From the source down, at every pipe the size with which it and all below cost least at the head there is. */
function chosenSizes(
  { upstream, length_m, sizes, source_m, isTapering }: SizingJob,
  losses: PipeLosses,
  frontAt: (pipe: number, level: number) => CostFront,
): Uint8Array {
  const size = new Uint8Array(upstream.length);
  const head_m = new Float64Array(upstream.length);
  for (let pipe = 0; pipe < upstream.length; pipe++) {
    const up = Number(upstream[pipe]);
    const before_m = up < 0 ? source_m : Number(head_m[up]);
    const widest = isTapering && up >= 0 ? Number(size[up]) : sizes.length - 1;
    let least = Infinity;
    for (let d = Number(losses.least[pipe]); d <= widest; d++) {
      const at_m = before_m - Number(losses.loss_m[pipe * sizes.length + d]);
      const front = frontAt(pipe, isTapering ? d : 0);
      const index = indexAt(front, at_m + dust_m);
      const cost =
        Number(length_m[pipe]) * (sizes[d]?.cost_pm ?? 0) + (index < 0 ? Infinity : Number(front.cost[index]));
      if (cost >= least) continue;
      least = cost;
      size[pipe] = d;
      head_m[pipe] = at_m;
    }
    if (least === Infinity) throw new Error(`pipe ${pipe} of a tree that can be sized has no size`);
  }
  return size;
}
