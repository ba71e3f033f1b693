import { describe, expect, it } from "vitest";
import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import optimal from "../fixtures/cutting/optimal.json" with { type: "json" };
import { createCutJob } from "../support/create-cut-job.ts";
import { fieldCutJobs, leaningCutJobs } from "../support/random-cut-jobs.ts";

/** Metres, or money. */
const tolerance = 1e-4;

const stored = optimal.jobs.map((each) => ({
  ...each,
  job: createCutJob({
    lengths_m: each.lengths_m,
    onHand_m: each.onHand_m,
    sizes: each.sizes.map((size) => ({ ...size, mass_kg: null })),
  }),
}));

describe(`small cutting jobs cost what ${optimal.solver} found to be the least (${optimal.command})`, () => {
  it("there are 200 jobs of up to 30 pieces, with part coils and with priced sizes among them", () => {
    expect(stored).toHaveLength(200);
    expect(Math.max(...stored.map(({ lengths_m }) => lengths_m.length))).toBe(30);
    expect(stored.filter(({ onHand_m }) => onHand_m.length > 0).length).toBeGreaterThan(40);
    expect(stored.filter(({ sizes }) => sizes.length > 1)).toHaveLength(40);
  });

  for (const kind of new Set(stored.map((each) => each.kind))) {
    it(`${kind}: no coil and no money more, and no bound above`, () => {
      const wrong = stored.flatMap((each, n) => {
        if (each.kind !== kind) return [];
        const answer = cutCoils(each.job).noJoins;
        const cost = answer?.bought.reduce(
          (sum, { length_m, count }) =>
            sum + count * (each.sizes.find((size) => size.length_m === length_m)?.price ?? length_m),
          0,
        );
        const isLeast = cost !== undefined && Math.abs(cost - each.least) < tolerance;
        const isBound = answer !== null && answer.bound.least <= each.least + tolerance;
        return isLeast && isBound ? [] : [{ n, cost, least: each.least, bound: answer?.bound }];
      });
      expect(wrong).toEqual([]);
    });
  }
});

describe("fields of 20 to 60 rows with three wires, against the bound that is proven with the answer", () => {
  const above = (jobs: ReturnType<typeof fieldCutJobs>) =>
    jobs.map((job) => {
      const answer = cutCoils(job).noJoins;
      if (answer === null) throw new Error("every run fits into a coil");
      return answer.boughtCount - answer.bound.coils;
    });

  it("rows of one length each: the bound in 9 of 10, never more than one coil above", () => {
    const gaps = above(fieldCutJobs(100, 1));
    expect(gaps.filter((gap) => gap === 0).length).toBeGreaterThanOrEqual(90);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(1);
  });

  it("leaning posts, every wire of its own length: the bound in 9 of 10, never more than one coil above", () => {
    const gaps = above(leaningCutJobs(40, 1));
    expect(gaps.filter((gap) => gap === 0).length).toBeGreaterThanOrEqual(36);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(1);
  });
});
