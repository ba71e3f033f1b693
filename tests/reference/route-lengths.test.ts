import { describe, expect, it } from "vitest";
import { type Compared, pathsCompared, treeCompared } from "../bench/checks/route-quality.ts";
import { gardenJobs, randomRouteJobs, sparseJobs } from "../support/random-route-jobs.ts";

// A share of what tests/bench/route-quality.ts does with the same functions. The exact answers are worked out here, by brute force: shortest
// ways by a visibility graph that keeps the whole distances, trees by dynamic programming over sets of rows (Dreyfus and Wagner 1971).

const parcels = 40;
/** A tee may lie farther out than where the exact way ends, and a way nearer to a row than it should: centimetres. */
const closer = 0.98;

function ratios(compared: readonly Compared[]): readonly number[] {
  return compared
    .filter(({ ours_m, least_m }) => Number.isFinite(ours_m) && Number.isFinite(least_m) && least_m > 5)
    .map(({ ours_m, least_m }) => ours_m / least_m);
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

describe("routes on random parcels against exact ones", () => {
  it("single ways are within 1 % of the shortest on average and 7 % at worst", () => {
    const all = randomRouteJobs(parcels, gardenJobs, [6, 30]).map(({ seed, job }) => ({
      seed,
      compared: pathsCompared(job, 7, true),
    }));
    const every = all.flatMap(({ compared }) => ratios(compared));
    expect(every.length).toBeGreaterThan(100);
    expect(Math.min(...every)).toBeGreaterThan(closer);
    const worst = all.filter(({ compared }) => ratios(compared).some((ratio) => ratio > 1.07));
    expect(worst.map(({ seed, compared }) => ({ seed, ratios: ratios(compared) }))).toEqual([]);
    expect(mean(every)).toBeLessThan(1.01);
  });

  it("trees to 4 to 9 rows are within 8 % of the cheapest", () => {
    const all = randomRouteJobs(parcels, sparseJobs, [4, 9]).map(({ seed, job }) => ({
      seed,
      ...treeCompared(job, false),
    }));
    expect(all.filter(({ ours_m, least_m }) => Number.isFinite(least_m) && !Number.isFinite(ours_m))).toEqual([]);
    const far = all.map((each) => ({ ...each, ratio: each.ours_m / each.least_m })).filter(({ ratio }) => ratio > 1.08);
    expect(far).toEqual([]);
  });
});
