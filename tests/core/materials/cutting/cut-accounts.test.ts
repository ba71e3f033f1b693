import { expect, it } from "vitest";
import {
  boundAccount,
  leftAccount,
  takenAccount,
  usableAccount,
} from "../../../../src/core/materials/cutting/cut-accounts.ts";
import { cutCoils } from "../../../../src/core/materials/cutting/cut-coils.ts";
import { createCutJob } from "../../../support/create-cut-job.ts";

/** Decimals of a metre. */
const decimals = 9;

it("what comes off a spool and what is left on it are reckoned from what is shown", () => {
  const job = createCutJob({ lengths_m: [190, 190, 190, 120], isJoinable: true, onHand_m: [200] });
  const plan = cutCoils(job);
  const answers = [plan.noJoins, plan.fewestCoils].flatMap((answer) => (answer === null ? [] : [answer]));
  expect(answers.some(({ joins }) => joins > 0)).toBe(true);
  for (const { coils } of answers) {
    for (const coil of coils) {
      expect(leftAccount(job, coil).value).toBeCloseTo(coil.left_m, decimals);
      for (const cut of coil.cuts) expect(takenAccount(job, cut).value).toBeCloseTo(cut.taken_m, decimals);
    }
  }
});

it("a coil of 1000 ft gives 299.752 m: 1 % and 2 m are kept back", () => {
  expect(usableAccount(createCutJob({ lengths_m: [] }), 304.8).value).toBeCloseTo(299.752, decimals);
});

it("the fewest coils by length are reckoned from the total", () => {
  const job = createCutJob({ lengths_m: [140, 140, 140, 90], onHand_m: [100] });
  const { noJoins } = cutCoils(job);
  if (noJoins === null) throw new Error("every run fits into a coil");
  // (510 + 4 x 0.3 - 97) / 299.752 = 1.38
  expect(boundAccount(job, noJoins).value).toBe(2);
  expect(noJoins.bound.coils).toBe(2);
});

it("where runs do not go together, words say why fewer will not do", () => {
  const job = createCutJob({ lengths_m: [160, 160, 160] });
  const { noJoins } = cutCoils(job);
  if (noJoins === null) throw new Error("every run fits into a coil");
  expect(noJoins).toMatchObject({ boughtCount: 3, isOptimal: true, bound: { by: "pairs", coils: 3 } });
  const told = boundAccount(job, noJoins);
  expect(told.value).toBeNull();
  expect(told.inputs.map(({ value }) => value.join(""))).toEqual(["2", "3"]);
});
