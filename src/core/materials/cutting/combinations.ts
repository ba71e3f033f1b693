import type { StockSize } from "./packing.ts";

/** So many coils of each size, and what they cost together. */
export interface Combination {
  readonly counts: readonly number[];
  readonly cost: number;
}

/**
 * Every number of coils of each size that could hold so much, with a cost from `least` to under `most`, cheapest first. null when there are
 * more than `limit`: then the list would be too long to go through.
 */
export function combinations(
  sizes: readonly StockSize[],
  needed_m: number,
  least: number,
  most: number,
  limit: number,
): readonly Combination[] | null {
  const found: Combination[] = [];
  const counts = sizes.map(() => 0);
  let visits = 50 * limit;
  const choose = (s: number, cost: number, room_m: number): boolean => {
    if (visits-- <= 0) return false;
    const size = sizes[s];
    if (size === undefined) {
      if (cost >= least && room_m >= needed_m) found.push({ counts: [...counts], cost });
      return found.length <= limit;
    }
    for (let n = 0; cost + n * size.cost < most; n++) {
      counts[s] = n;
      if (!choose(s + 1, cost + n * size.cost, room_m + n * size.usable_m)) return false;
    }
    counts[s] = 0;
    return true;
  };
  if (!choose(0, 0, 0)) return null;
  return found.sort((a, b) => a.cost - b.cost);
}

/** The cheapest fractional cost of so much length: no packing costs less. */
export function leastByLength(sizes: readonly StockSize[], needed_m: number): number {
  const rate = sizes.reduce((least, { cost, usable_m }) => Math.min(least, cost / usable_m), Infinity);
  return needed_m <= 0 ? 0 : needed_m * rate;
}

/** The least cost from a bound on that some number of coils can come to: a bound of 11.2 coils of one size is 12. */
export function reachable(sizes: readonly { readonly cost: number }[], bound: number): number {
  const [only, ...more] = sizes;
  if (only === undefined || bound <= 0) return 0;
  if (more.length === 0) return Math.ceil(bound / only.cost - 1e-9) * only.cost;
  return bound;
}
