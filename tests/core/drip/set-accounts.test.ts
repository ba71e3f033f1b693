import { expect, it } from "vitest";
import type { Account } from "../../../src/core/account.ts";
import {
  emissionAccount,
  emitterAccount,
  meanFlowAccount,
  statisticalAccount,
  variationAccount,
} from "../../../src/core/drip/evenness-accounts.ts";
import { setFlowAccount, setsAccount, spareAccount } from "../../../src/core/drip/set-accounts.ts";
import { pressureOf_kpa } from "../../../src/core/hydraulics/pressure-head.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSettings } from "../../../src/core/project/edits.ts";
import type { Json } from "../../../src/core/project/project.ts";
import { readSample } from "../../support/sample-plans.ts";

/** Heads are solved to about this much, so flows too: relative. */
const near = 1e-6;

function watered(...edits: readonly (readonly [path: string, value: Json])[]) {
  const project = withSettings(readSample("acre-with-notch"), edits);
  if (!project.ok) throw new Error("the sample takes these settings");
  const plan = createPlanner().plan(project.value);
  const [job, watering] = [plan.watering?.job, plan.watering?.watering];
  if (!job || !watering || watering.sets.length === 0) throw new Error("the sample is watered");
  return { job, watering };
}

function expectGives(account: Account | null, value: number): void {
  expect(Math.abs((account?.value ?? Number.NaN) - value)).toBeLessThanOrEqual(near * Math.max(1, Math.abs(value)));
  expect(account?.source).not.toBe("");
}

const kinds = [
  ["compensating emitters", []],
  ["plain emitters", [["drip.emitterKind", "plain"]]],
  [
    "plain emitters, two at a vine, three sets",
    [
      ["drip.emitterKind", "plain"],
      ["drip.emittersPerVine", 2],
      ["sets.count", 3],
    ],
  ],
  [
    "compensating emitters that starve",
    [
      ["drip.emitterLeast", "45 psi"],
      ["sets.count", 1],
    ],
  ],
] as const;

it.each(kinds)("the numbers of sets and evenness follow from what is told of them: %s", (_, edits) => {
  const { job, watering } = watered(...edits);
  expectGives(setsAccount(job, watering), watering.sets.length);
  for (const set of watering.sets) {
    expectGives(setFlowAccount(set), set.flow_lps * 3600);
    expectGives(spareAccount(job, watering, set, "1"), pressureOf_kpa(set.spare_m));
  }
  watering.blocks.forEach((evenness, b) => {
    const block = job.blocks[b];
    if (evenness === null || block === undefined) return;
    expectGives(emissionAccount(block, evenness), evenness.emission_ratio);
    expectGives(statisticalAccount(block, evenness), evenness.statistical_ratio);
    expectGives(variationAccount(evenness), evenness.variation_ratio);
    expectGives(meanFlowAccount(evenness), evenness.mean_lps * 3600);
    const { emitters } = watering;
    if (emitters === null) throw new Error("there are sets, so every emitter is known");
    const row = (lateral: number) => String(lateral);
    expectGives(emitterAccount(job, emitters, b, "lowest", row), evenness.lowest_lps * 3600);
    expectGives(emitterAccount(job, emitters, b, "highest", row), evenness.highest_lps * 3600);
  });
});

it("says why there are so many sets", () => {
  const asked = watered(["sets.count", 3]);
  expect(setsAccount(asked.job, asked.watering).formula.join("")).toContain("As many as are asked for");
  const free = watered();
  expect(setsAccount(free.job, free.watering).formula.join("")).toContain("The fewest that the water feeds");
});
