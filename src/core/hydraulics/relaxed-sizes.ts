import { type ConvexCost, costBefore, costFrom, costTogether, openCost, shareOf } from "./convex-cost.ts";
import { cornerAt, type Hull, hullOf } from "./cost-hull.ts";
import type { PipeLosses } from "./pipe-losses.ts";
import type { SizingJob } from "./sizing-job.ts";

/** What choosing sizes would come to if a pipe could be of two sizes, one after the other. */
export interface RelaxedSizes {
  /** No choice of sizes costs less. */
  readonly bound: number;
  /** What a metre of head is worth at the upstream end of each pipe. */
  readonly worth: Float64Array;
  /** The least that cost and head, at that worth, come to for a pipe and all below it. */
  readonly least: Float64Array;
  /** A choice of sizes that serves: the wider one of two. */
  readonly size: Uint8Array;
}

/**
 * The relaxed problem solved exactly, with its prices: far ends first, what is below a place costs a convex function of the head there; then down again,
 * sharing out the head there is. A choice of some pipe's size and all below it is no part of a tree cheaper than some sum by more than it stays under it:
 * bound + (cost + worth × head wanted) − least. Only for trees that the widest pipes serve.
 */
export function relaxedSizes(job: SizingJob, losses: PipeLosses): RelaxedSizes {
  const { upstream, wanted_m, source_m } = job;
  const count = upstream.length;
  const hulls = Array.from(upstream, (_, pipe) => hullOf(job, losses, pipe));
  const below: (ConvexCost | null)[] = new Array(count).fill(null);
  for (let pipe = count - 1; pipe >= 0; pipe--) {
    const own = costFrom(below[pipe] ?? openCost(-Infinity), Number(wanted_m[pipe]));
    below[pipe] = own;
    const up = Number(upstream[pipe]);
    if (up < 0) continue;
    const before = costBefore(own, hulls[pipe]?.cost ?? openCost(0));
    const beside = below[up] ?? null;
    below[up] = beside === null ? before : costTogether(beside, before);
  }

  const head_m = new Float64Array(count);
  const size = new Uint8Array(count);
  const more = new Float64Array(count);
  const less = new Float64Array(count);
  const moreBelow = new Float64Array(count);
  for (const [pipe, up] of upstream.entries()) {
    const { cost, sizes } = hulls[pipe] ?? { cost: openCost(0), sizes: [] };
    const share = shareOf(below[pipe] ?? openCost(0), cost, up < 0 ? source_m : Number(head_m[up]));
    head_m[pipe] = (up < 0 ? source_m : Number(head_m[up])) - cost.from_m - share.pipe_m;
    size[pipe] = cornerAt(cost, sizes, share.pipe_m);
    less[pipe] = share.less;
    more[pipe] = share.more;
    if (up >= 0) moreBelow[up] = Number(moreBelow[up]) + share.more;
  }
  if (job.isTapering) {
    for (let pipe = count - 1; pipe >= 0; pipe--) {
      const up = Number(upstream[pipe]);
      if (up >= 0) size[up] = Math.max(Number(size[up]), Number(size[pipe]));
    }
  }
  const worth = worthOf(job, more, less, moreBelow);
  return { ...priced(job, hulls, worth), worth, size };
}

/** Of what more and less head do to each branch, a worth for each so that those of branches are no more than that of the pipe they leave. */
function worthOf(
  { upstream, wanted_m }: SizingJob,
  more: Float64Array,
  less: Float64Array,
  moreBelow: Float64Array,
): Float64Array {
  const worth = new Float64Array(upstream.length);
  const left = new Float64Array(upstream.length);
  for (const [pipe, up] of upstream.entries()) {
    const low = Number(more[pipe]);
    const room = Math.max(0, Number(less[pipe]) - low);
    const extra = up < 0 ? 0 : Math.min(room, Number(left[up]));
    if (up >= 0) left[up] = Number(left[up]) - extra;
    worth[pipe] = low + extra;
    left[pipe] = Math.max(0, low + extra - Number(moreBelow[pipe]));
  }
  const together = new Float64Array(upstream.length);
  for (let pipe = upstream.length - 1; pipe >= 0; pipe--) {
    const sum = Number(together[pipe]);
    worth[pipe] = wanted_m[pipe] === -Infinity ? sum : Math.max(Number(worth[pipe]), sum);
    const up = Number(upstream[pipe]);
    if (up >= 0) together[up] = Number(together[up]) + Number(worth[pipe]);
  }
  return worth;
}

/** The least of cost and head at their worth, by pipe with all below it, and what that makes of the whole. */
function priced({ upstream, wanted_m, source_m }: SizingJob, hulls: readonly Hull[], worth: Float64Array) {
  const least = new Float64Array(upstream.length);
  const below = new Float64Array(upstream.length);
  const worthBelow = new Float64Array(upstream.length);
  let bound = 0;
  for (let pipe = upstream.length - 1; pipe >= 0; pipe--) {
    const own = Number(worth[pipe]);
    const wanted = own - Number(worthBelow[pipe]);
    least[pipe] =
      Number(below[pipe]) +
      cheapest(hulls[pipe]?.cost ?? openCost(0), own) +
      (wanted > 0 ? wanted * Number(wanted_m[pipe]) : 0);
    const up = Number(upstream[pipe]);
    if (up < 0) {
      bound += Number(least[pipe]) - own * source_m;
    } else {
      below[up] = Number(below[up]) + Number(least[pipe]);
      worthBelow[up] = Number(worthBelow[up]) + own;
    }
  }
  return { bound, least };
}

/** The least of a pipe's cost and its lost head at some worth. */
function cheapest({ from_m, cost, width_m, rate }: ConvexCost, worth: number): number {
  let sum = cost + worth * from_m;
  for (let i = 0; i < rate.length && Number(rate[i]) > worth; i++)
    sum -= Number(width_m[i]) * (Number(rate[i]) - worth);
  return sum;
}
