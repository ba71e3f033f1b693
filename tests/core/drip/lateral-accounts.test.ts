import { expect, test } from "vitest";
import type { Account } from "../../../src/core/account.ts";
import { evennessOf } from "../../../src/core/drip/evenness.ts";
import {
  cupAccount,
  emissionAccount,
  flushAccount,
  inletAccount,
  longestAccount,
  riserAccount,
  statisticalAccount,
  variationAccount,
} from "../../../src/core/drip/lateral-accounts.ts";
import { lateralNeeds } from "../../../src/core/drip/lateral-needs.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

function expectGives(account: Account | null, shown: number): void {
  expect(account?.value).toBeCloseTo(shown, 7);
  for (const units of ["metric", "us"] as const) {
    expect(text(account?.formula ?? [], units)).toMatch(/^[A-Z].*\.$/s);
    for (const { name, value } of account?.inputs ?? []) {
      expect(`${name}: ${text(value, units)}`).not.toMatch(/: $|NaN|undefined/);
    }
  }
  expect(account?.source).not.toBe("");
}

const plain = { rows: 2, vines: 40, rise_ratio: 0.03 };
const compensating = {
  ...plain,
  drip: { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 70, barb: "standard", emittersPerVine: 2 },
} as const;

test.each([plain, compensating])("every number of a lateral comes about as its account says", (sketch) => {
  const job = createWateringJob(sketch);
  const [block] = job.blocks;
  const [need] = lateralNeeds(job);
  if (block === undefined || need === undefined) throw new Error("there is no lateral");
  expectGives(inletAccount(job, 0), need.inlet_m * 9.80665);
  expectGives(emissionAccount(need.evenness, block), need.evenness.emission_ratio);
  expectGives(statisticalAccount(need.evenness, block), need.evenness.statistical_ratio);
  expectGives(variationAccount(need.evenness), need.evenness.variation_ratio);
  expectGives(longestAccount(need, block), need.longest?.length_m ?? Number.NaN);
  expectGives(flushAccount(need, block), need.flush_lps * 3600);
  expectGives(riserAccount(job, 0, 0.4), 1);
});

test("the pressure a row needs counts from the pipe at its tee", () => {
  const job = createWateringJob({ ...plain, lineRise_ratio: 0.1 });
  const [first, second] = lateralNeeds(job);
  expectGives(inletAccount(job, 0), ((first?.inlet_m ?? 0) - 1) * 9.80665);
  expectGives(inletAccount(job, 1), ((second?.inlet_m ?? 0) - 1.3) * 9.80665);
});

test("what runs into a cup is the flow over three minutes", () => {
  expectGives(cupAccount({ emitter: 3, volume_l: 0.1 }), 0.1);
});

test("emitters without water bring the evenness to nothing, and are told", () => {
  const job = createWateringJob(plain);
  const [block] = job.blocks;
  if (block === undefined) throw new Error("no block");
  const account = emissionAccount(evennessOf(job, [0], new Float64Array(40)), block);
  expectGives(account, 0);
  expect(account.inputs.map(({ name }) => name)).toContain("Without water");
});
