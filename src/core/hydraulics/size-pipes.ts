import { type CostFront, emptyFront, frontFrom, frontSum, indexAt, lowerFront, openFront } from "./cost-front.ts";
import type { LawCode } from "./friction-law.ts";
import { type PipeLosses, pipeLosses } from "./pipe-losses.ts";
import { type RelaxedSizes, relaxedSizes } from "./relaxed-sizes.ts";

/** A size that pipe comes in. */
export interface SizeChoice {
  readonly inside_mm: number;
  readonly cost_pm: number;
}

/** Which size each pipe of a tree is to have, so that every place gets its head at the least cost. */
export interface SizingJob {
  /** The pipe that each goes on from; -1 from the source. Each comes after the one it goes on from. */
  readonly upstream: Int32Array;
  readonly length_m: Float64Array;
  readonly flow_lps: Float64Array;
  /** Total head wanted at its downstream end; -Infinity where none is. */
  readonly wanted_m: Float64Array;
  /** Smallest first. */
  readonly sizes: readonly SizeChoice[];
  /** Index of the smallest size each may have; null: any. */
  readonly least: Uint8Array | null;
  /** Total head at the source. */
  readonly source_m: number;
  readonly law: LawCode;
  readonly roughness: number;
  readonly viscosity_m2ps: number;
  readonly mostVelocity_mps: number;
  /** Pipe may not be wider than the one it goes on from. */
  readonly isTapering: boolean;
}

export interface Sizing {
  /** Index into the sizes, by pipe. */
  readonly size: Uint8Array;
  readonly cost: number;
  /** Total head at the downstream end of each. */
  readonly head_m: Float64Array;
}

/**
 * Heads that are kept of a front: few first, for a cost that sorts out what can not be cheaper, then more as long as something was left out. What is
 * left out at last is some millionths of the cost of a tree of 400 tees.
 */
const usualFineness = [50, 400, 2000];
/** Rounding of sums of heads, and of costs. */
const dust_m = 1e-9;
const dust_ratio = 1e-9;

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

function cheapestSizing(
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

/** What sizes come to. */
function sizingOf(
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
