import { describe, expect, it } from "vitest";
import { type Compared, pathsCompared, treeCompared } from "../bench/checks/route-quality.ts";
import { gardenJobs, randomRouteJobs, sparseJobs } from "../support/random-route-jobs.ts";

// A share of what tests/bench/route-quality.ts does with the same functions. The exact answers are worked out here, by brute force: shortest
// ways by a visibility graph that keeps the whole distances, trees by dynamic programming over sets of rows (Dreyfus and Wagner 1971).

const parcels = 40;
/**
 * Rows as bare lines reach as far as the trench crosses their line; ours may pass between there and the anchor, and comes out shorter by
 * so much.
 */
const closer = 0.98;
/** At worst, single ways and trees. */
const mostWay = 1.07;
const mostTree = 1.08;

/** On average. */
const meanWay = 1.01;

function ratios(compared: readonly Compared[]): readonly number[] {
  return compared
    .filter(({ ours_m, least_m }) => Number.isFinite(ours_m) && Number.isFinite(least_m) && least_m > 5)
    .map(({ ours_m, least_m }) => ours_m / least_m);
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Parcels whose ratio is above what is allowed, with it. */
function beyond(worst: ReadonlyMap<number, number>, allowed: number) {
  return [...worst].filter(([, ratio]) => ratio > allowed);
}

describe("routes on random parcels against exact ones", () => {
  it("single ways are near the shortest, on average and at worst, and none is shorter than it can be", () => {
    const jobs = randomRouteJobs(parcels, gardenJobs, [6, 30]);
    const kept = jobs.map(({ seed, job }) => [seed, ratios(pathsCompared(job, 7, true))] as const);
    expect(beyond(new Map(kept.map(([seed, all]) => [seed, Math.max(...all)])), mostWay)).toEqual([]);
    const every = kept.flatMap(([, all]) => all);
    expect(every.length).toBeGreaterThan(100);
    expect(mean(every)).toBeLessThan(meanWay);
    // Held to rows as bare lines nothing can be shorter than the exact way.
    const bare = jobs.flatMap(({ job }) => ratios(pathsCompared(job, 7, false)));
    expect(Math.min(...bare)).toBeGreaterThan(closer);
  });

  it("trees to 4 to 9 rows are within 8 % of the cheapest to the same ends, and to the best of all ends", () => {
    const all = randomRouteJobs(parcels, sparseJobs, [4, 9]).map(({ seed, job }) => ({
      seed,
      ...treeCompared(job, false),
    }));
    expect(all.filter(({ ours_m, least_m }) => Number.isFinite(least_m) && !Number.isFinite(ours_m))).toEqual([]);
    const atOurEnds = new Map(all.map(({ seed, ours_m, atOurEnds_m }) => [seed, ours_m / atOurEnds_m]));
    expect(beyond(atOurEnds, mostTree)).toEqual([]);
    const best = new Map(all.map(({ seed, ours_m, least_m }) => [seed, ours_m / least_m]));
    expect(beyond(best, mostTree)).toEqual([]);
  });
});
