import type { ConvexCost } from "./convex-cost.ts";
import type { PipeLosses } from "./pipe-losses.ts";
import type { SizingJob } from "./sizing-job.ts";

/** What a pipe costs by the head it loses, as if it could be of two sizes. */
export interface Hull {
  readonly cost: ConvexCost;
  /** Sizes at its corners, the widest first. */
  readonly sizes: readonly number[];
}

/** The narrowest size at a corner that loses no more. */
export function cornerAt({ width_m }: ConvexCost, sizes: readonly number[], lost_m: number): number {
  let left_m = lost_m + 1e-10;
  let corner = 0;
  while (corner < width_m.length && left_m >= Number(width_m[corner])) {
    left_m -= Number(width_m[corner]);
    corner++;
  }
  return sizes[corner] ?? 0;
}

/** Sizes of a pipe that lie on the lower hull of cost by loss. */
export function hullOf({ sizes, length_m }: SizingJob, { loss_m, least }: PipeLosses, pipe: number): Hull {
  const lossAt = (d: number) => Number(loss_m[pipe * sizes.length + d]);
  const costAt = (d: number) => Number(length_m[pipe]) * Number(sizes[d]?.cost_pm);
  const corners: number[] = [];
  for (let d = sizes.length - 1; d >= Number(least[pipe]); d--) {
    for (let last = corners.at(-1); last !== undefined && costAt(d) < costAt(last); last = corners.at(-1)) {
      const before = corners.at(-2);
      const isAbove =
        before === undefined
          ? lossAt(d) <= lossAt(last)
          : (costAt(last) - costAt(d)) * (lossAt(last) - lossAt(before)) >=
            (costAt(before) - costAt(last)) * (lossAt(d) - lossAt(last));
      if (!isAbove) break;
      corners.pop();
    }
    const last = corners.at(-1);
    if (last === undefined || costAt(d) < costAt(last)) corners.push(d);
  }
  const width_m = new Float64Array(Math.max(0, corners.length - 1));
  const rate = new Float64Array(width_m.length);
  for (let i = 0; i < width_m.length; i++) {
    const [wide = 0, narrow = 0] = [corners[i], corners[i + 1]];
    width_m[i] = lossAt(narrow) - lossAt(wide);
    rate[i] = (costAt(wide) - costAt(narrow)) / Number(width_m[i]);
  }
  const [first = 0] = corners;
  return { cost: { from_m: lossAt(first), cost: costAt(first), width_m, rate }, sizes: corners };
}
