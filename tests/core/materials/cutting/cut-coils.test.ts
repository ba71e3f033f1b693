import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutCoils } from "../../../../src/core/materials/cutting/cut-coils.ts";
import type { CutJob } from "../../../../src/core/materials/cutting/cut-job.ts";
import type { CutAnswer, CutPlan } from "../../../../src/core/materials/cutting/cut-plan.ts";
import { coil1000ft, createCutJob, usable_m } from "../../../support/create-cut-job.ts";
import { largeCutJob } from "../../../support/random-cut-jobs.ts";

const dust_m = 1e-6;
const seed = 7;

function answerOf(plan: CutPlan): CutAnswer {
  const answer = plan.chosen === null ? null : plan[plan.chosen];
  if (answer === null) throw new Error("everything can be cut");
  return answer;
}

/** What is wrong with an answer; nothing when it can be carried out. */
function faults(job: CutJob, answer: CutAnswer, uncut: readonly number[] = []): string[] {
  const wrong: string[] = [];
  for (const coil of answer.coils) {
    let left_m = coil.length_m;
    for (const cut of coil.cuts) {
      const run = job.runs[cut.run];
      if (run === undefined) wrong.push("a run that is none");
      const ends = [cut.from_m > 0, cut.to_m < (run?.length_m ?? 0)].filter(Boolean).length;
      const taken_m = cut.to_m - cut.from_m + (ends * job.joinLength_m) / 2 + job.slop_m;
      if (Math.abs(taken_m - cut.taken_m) > dust_m) wrong.push("taken is not piece, join and slop");
      left_m -= taken_m;
      if (Math.abs(left_m - cut.left_m) > dust_m) wrong.push("cut and left are not the coil");
    }
    if (Math.abs(left_m - coil.left_m) > dust_m) wrong.push("what is left is not what the last cut leaves");
    if (left_m < coil.length_m - usable_m(job, coil.length_m) - dust_m) wrong.push("the reserve is cut into");
  }
  for (const [n, run] of job.runs.entries()) {
    const parts = answer.coils
      .flatMap(({ cuts }) => cuts.filter((cut) => cut.run === n))
      .sort((a, b) => a.from_m - b.from_m);
    if (uncut.includes(n)) {
      if (parts.length > 0) wrong.push("an uncut run is cut");
      continue;
    }
    let reached_m = 0;
    for (const { from_m, to_m } of parts) {
      if (from_m !== reached_m) wrong.push("a run has a gap or an overlap");
      if (to_m !== run.length_m && !run.joinsAt_m.includes(to_m)) wrong.push("a join where none may be");
      reached_m = to_m;
    }
    if (reached_m !== run.length_m) wrong.push("a run is not whole");
  }
  const bought = answer.coils.filter(({ isOnHand }) => !isOnHand);
  const onHand = answer.coils.filter(({ isOnHand }) => isOnHand).map(({ length_m }) => length_m);
  const there = [...job.onHand_m];
  for (const length_m of onHand) {
    const place = there.indexOf(length_m);
    if (place === -1) wrong.push("a coil on hand that is not there");
    else there.splice(place, 1);
  }
  if (bought.length !== answer.boughtCount) wrong.push("bought coils miscounted");
  if (answer.boughtCount < answer.bound.coils) wrong.push("fewer coils than the bound");
  return wrong;
}

const lengths = fc.array(fc.integer({ min: 1000, max: 28_000 }), { minLength: 1, maxLength: 18 });
const metres = (cm: readonly number[]) => cm.map((each) => each / 100);
const jobs = fc
  .record({
    lengths_m: lengths.map(metres),
    wires: fc.integer({ min: 1, max: 2 }),
    isJoinable: fc.boolean(),
    onHand_m: fc.array(fc.integer({ min: 0, max: 40_000 }), { maxLength: 3 }).map(metres),
    sizes: fc.constantFrom(
      [coil1000ft],
      [coil1000ft, { length_m: 914.4, price: null, mass_kg: null }],
      [
        { length_m: 304.8, price: 70, mass_kg: null },
        { length_m: 609.6, price: 120, mass_kg: null },
      ],
    ),
  })
  .map(createCutJob);

describe("whatever is to be cut", () => {
  it("every run comes whole, once, from coils that keep their reserve, joined only where it may be", () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const plan = cutCoils(job);
        for (const answer of [plan.noJoins, plan.fewestCoils]) {
          if (answer !== null) expect(faults(job, answer, plan.uncut)).toEqual([]);
        }
        expect(plan.noJoins?.joins).toBe(0);
      }),
      { seed, numRuns: 150 },
    );
  });

  it("the order in which runs are given does not change what is bought", () => {
    fc.assert(
      fc.property(jobs, fc.integer(), (job, turn) => {
        const places = job.runs.map((_, i) => i).sort((a, b) => ((a * 7919 + turn) % 101) - ((b * 7919 + turn) % 101));
        const mixed = places.flatMap((place) => job.runs.slice(place, place + 1));
        expect(cutCoils({ ...job, runs: mixed }).noJoins?.bought).toEqual(cutCoils(job).noJoins?.bought);
      }),
      { seed, numRuns: 60 },
    );
  });

  it("one more coil on hand never needs more coils bought", () => {
    fc.assert(
      fc.property(lengths.map(metres), fc.integer({ min: 0, max: 40_000 }), (lengths_m, coil_cm) => {
        const before = answerOf(cutCoils(createCutJob({ lengths_m })));
        const after = answerOf(cutCoils(createCutJob({ lengths_m, onHand_m: [coil_cm / 100] })));
        expect(after.boughtCount).toBeLessThanOrEqual(before.boughtCount);
      }),
      { seed, numRuns: 80 },
    );
  });

  it("a large job can be carried out too", () => {
    for (const isLeaning of [false, true]) {
      const job = largeCutJob(isLeaning, 304.8, true);
      const plan = cutCoils(job);
      for (const answer of [plan.noJoins, plan.fewestCoils]) {
        expect(answer).not.toBeNull();
        if (answer !== null) expect(faults(job, answer)).toEqual([]);
      }
    }
  });
});

describe("coils", () => {
  it("three rows of 140 m take two coils of 1000 ft, and the order of work names what is left on the spool", () => {
    const { noJoins, chosen } = cutCoils(createCutJob({ lengths_m: [140, 140, 140] }));
    expect(chosen).toBe("noJoins");
    expect(noJoins).toMatchObject({ boughtCount: 2, isOptimal: true, bound: { coils: 2 } });
    const [first] = noJoins?.coils ?? [];
    expect(first?.cuts.map(({ run }) => run)).toEqual([0, 1]);
    expect(first?.cuts.at(-1)?.left_m).toBeCloseTo(304.8 - 2 * 140.3, 9);
  });

  it("a part coil on hand is used before a coil is bought", () => {
    const plan = cutCoils(createCutJob({ lengths_m: [140, 140, 140], onHand_m: [150] }));
    expect(answerOf(plan).boughtCount).toBe(1);
    expect(answerOf(plan).coils.some(({ isOnHand, cuts }) => isOnHand && cuts.length === 1)).toBe(true);
  });

  it("a coil that would hold a row but for its reserve does not give it", () => {
    const job = createCutJob({ lengths_m: [300] });
    expect(cutCoils(job)).toMatchObject({ noJoins: null, fewestCoils: null, chosen: null, uncut: [0] });
    expect(cutCoils({ ...job, reserve_m: 0, reserve_ratio: 0 }).noJoins?.boughtCount).toBe(1);
  });

  it("a run longer than any coil is joined in an inner bay", () => {
    const job = createCutJob({ lengths_m: [400], isJoinable: true });
    const plan = cutCoils(job);
    expect(plan).toMatchObject({ noJoins: null, chosen: "fewestCoils", uncut: [] });
    expect(faults(job, answerOf(plan))).toEqual([]);
    expect(answerOf(plan)).toMatchObject({ boughtCount: 2, joins: 1 });
  });

  it("a run longer than every size sold comes from the one coil on hand that holds it", () => {
    const plan = cutCoils(createCutJob({ lengths_m: [400, 100], onHand_m: [420] }));
    expect(answerOf(plan)).toMatchObject({ boughtCount: 1, isOptimal: true, bound: { by: "length" } });
  });

  it("joins are chosen when they save a coil and have no price, not when they cost more than the coil", () => {
    const priced = [{ length_m: 304.8, price: 60, mass_kg: null }];
    const job = createCutJob({ lengths_m: [190, 190, 190], isJoinable: true, sizes: priced });
    expect(cutCoils({ ...job, joinPrice: 1 })).toMatchObject({ chosen: "fewestCoils", noJoins: { price: 180 } });
    expect(cutCoils({ ...job, joinPrice: 1 }).fewestCoils).toMatchObject({ boughtCount: 2, joins: 1, price: 121 });
    expect(cutCoils({ ...job, joinPrice: 90 }).chosen).toBe("noJoins");
  });

  it("where every size has a price the cheapest mix is bought, in each length where it costs least", () => {
    const sizes = [
      { length_m: 304.8, price: 50, mass_kg: null },
      { length_m: 304.8, price: 40, mass_kg: null },
      { length_m: 609.6, price: 70, mass_kg: null },
    ];
    const answer = answerOf(cutCoils(createCutJob({ lengths_m: [290, 290, 290], sizes })));
    expect(answer).toMatchObject({ boughtCount: 2, price: 110, isOptimal: true });
    expect(answer.bought).toEqual([
      { length_m: 304.8, count: 1 },
      { length_m: 609.6, count: 1 },
    ]);
  });

  it("nothing to cut needs no coil", () => {
    expect(cutCoils(createCutJob({ lengths_m: [] })).noJoins).toMatchObject({ boughtCount: 0, coils: [] });
  });

  it("with nothing sold and nothing on hand nothing can be cut", () => {
    expect(cutCoils(createCutJob({ lengths_m: [50], sizes: [] }))).toMatchObject({ chosen: null, uncut: [0] });
  });
});

it("without a coil to buy, what coils on hand do not give is told row by row", () => {
  const job = { ...createCutJob({ lengths_m: [149, 149, 149, 100] }), sizes: [], onHand_m: [310] };
  const plan = cutCoils(job);
  expect(plan.noJoins).toBeNull();
  expect(plan.uncut.length).toBe(2);
  expect(plan.chosen).toBeNull();
});
