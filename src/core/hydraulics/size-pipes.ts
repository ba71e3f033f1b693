import { type CostFront, emptyFront, frontFrom, frontSum, indexAt, lowerFront, openFront } from "./cost-front.ts";
import type { LawCode } from "./friction-law.ts";
import { type PipeLosses, pipeLosses } from "./pipe-losses.ts";

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

/** Heads that are kept of each front: what a tree of 60 tees costs is exact to some millionths with them, one of 400 to some ten-thousandths. */
const usualFineness = 1000;
/** Rounding of sums of heads. */
const dust_m = 1e-9;

/**
 * The cheapest sizes that give every place its head within the velocity cap; null where even the widest do not. From the far ends up, by pipe and
 * size, what all below costs by the head at hand (dominated choices dropped); then down again with the head there is.
 */
export function sizePipes(job: SizingJob, fineness: number = usualFineness): Sizing | null {
  const { sizes, upstream, length_m, wanted_m, isTapering } = job;
  const losses = pipeLosses(job);
  const highest_m = highestHeads(job, losses);
  const count = upstream.length;
  const levels = isTapering ? sizes.length : 1;
  // By pipe and by the widest size that what goes on may have; the source comes last.
  const fronts: (CostFront | null)[] = new Array((count + 1) * levels).fill(null);
  const frontAt = (pipe: number, level: number) =>
    fronts[pipe * levels + level] ?? openFront((pipe < count ? wanted_m[pipe] : undefined) ?? -Infinity);

  for (let pipe = count - 1; pipe >= 0; pipe--) {
    const up = Number(upstream[pipe]);
    const before = up < 0 ? count : up;
    const most_m = up < 0 ? job.source_m : Number(highest_m[up]);
    const from = Number(losses.least[pipe]);
    let front = emptyFront;
    for (let d = 0; d < sizes.length; d++) {
      if (d >= from) {
        const step = {
          loss_m: Number(losses.loss_m[pipe * sizes.length + d]),
          cost: Number(length_m[pipe]) * (sizes[d]?.cost_pm ?? 0),
        };
        front = lowerFront(front, frontAt(pipe, isTapering ? d : 0), step, most_m + dust_m, fineness);
      }
      const level = isTapering ? d : 0;
      if (!isTapering && d < sizes.length - 1) continue;
      const own = before * levels + level;
      const beside = fronts[own] ?? null;
      const joined = beside === null ? front : frontSum(beside, front, fineness);
      fronts[own] = before < count ? frontFrom(joined, Number(wanted_m[before])) : joined;
    }
  }
  if (indexAt(frontAt(count, levels - 1), job.source_m + dust_m) < 0) return null;
  return chosenSizes(job, losses, frontAt);
}

/** Total head at the downstream end of each pipe with everything on the way as wide as there is. */
function highestHeads({ upstream, sizes, source_m }: SizingJob, { loss_m }: PipeLosses): Float64Array {
  const highest_m = new Float64Array(upstream.length);
  const widest = sizes.length - 1;
  for (const [pipe, up] of upstream.entries()) {
    highest_m[pipe] = (up < 0 ? source_m : Number(highest_m[up])) - Number(loss_m[pipe * sizes.length + widest]);
  }
  return highest_m;
}

/** From the source down, at every pipe the size with which it and all below cost least at the head there is. */
function chosenSizes(
  { upstream, length_m, sizes, source_m, isTapering }: SizingJob,
  losses: PipeLosses,
  frontAt: (pipe: number, level: number) => CostFront,
): Sizing {
  const size = new Uint8Array(upstream.length);
  const head_m = new Float64Array(upstream.length);
  let total = 0;
  for (const [pipe, up] of upstream.entries()) {
    const before_m = up < 0 ? source_m : Number(head_m[up]);
    const widest = isTapering && up >= 0 ? Number(size[up]) : sizes.length - 1;
    let least = Infinity;
    for (let d = Number(losses.least[pipe]); d <= widest; d++) {
      const at_m = before_m - Number(losses.loss_m[pipe * sizes.length + d]);
      const front = frontAt(pipe, isTapering ? d : 0);
      const index = indexAt(front, at_m + dust_m);
      if (index < 0) continue;
      const own = Number(length_m[pipe]) * (sizes[d]?.cost_pm ?? 0);
      if (own + Number(front.cost[index]) >= least) continue;
      least = own + Number(front.cost[index]);
      size[pipe] = d;
      head_m[pipe] = at_m;
    }
    if (least === Infinity) throw new Error(`pipe ${pipe} of a tree that can be sized has no size`);
    total += Number(length_m[pipe]) * (sizes[Number(size[pipe])]?.cost_pm ?? 0);
  }
  return { size, cost: total, head_m };
}
