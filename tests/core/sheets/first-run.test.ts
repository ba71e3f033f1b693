import { expect, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { defaults } from "../../../src/core/project/defaults.ts";
import type { WaterSettings } from "../../../src/core/project/water-settings.ts";
import { firstRunSheet } from "../../../src/core/sheets/first-run.ts";
import { at, createProject } from "../../support/create-project.ts";

function planWith(water: Partial<WaterSettings>) {
  return createPlanner().plan(
    createProject({
      sources: [{ key: "well", name: "Well", at: at([-8, 6]) }],
      water: { ...defaults.metric.water, ...water },
    }),
  );
}

const plan = planWith({ kind: "tank", tankLevel_m: 40, limitFlow_lph: 900 });
const sheet = firstRunSheet(plan, "metric");

test("every set is checked at rows of its own, from the first vine to the last", () => {
  const names = plan.watering?.watering?.sets.map(({ name }) => name) ?? [];
  expect(names.length).toBeGreaterThan(1);
  expect([...new Set(sheet?.checks.map(({ set }) => set))]).toEqual(names);
  for (const { row, cups } of sheet?.checks ?? []) {
    expect(cups.map((cup) => cup.at)).toEqual(["first vine", "middle vine", "last vine"]);
    expect(cups[0]?.emitter).toBe(1);
    expect(cups.at(-1)?.emitter).toBe(plan.rows?.rows.find(({ id }) => id === row)?.vines);
  }
});

test("a cup of three minutes holds a twentieth of what its emitter gives in an hour", () => {
  // Compensating emitters of 1.9 L/h within their range.
  for (const { cups } of sheet?.checks ?? []) for (const { volume } of cups) expect(volume).toBe("95 mL");
});

test("how many hoses are flushed at once is said, and what to do where not even one can be", () => {
  const fewest = Math.min(...(plan.watering?.watering?.sets.map(({ flushable }) => flushable) ?? []));
  expect(fewest).toBeGreaterThan(0);
  expect(sheet?.steps.join(" ")).toContain(`Flush no more than ${fewest} hose`);
  const meagre = firstRunSheet(planWith({ kind: "tank", tankLevel_m: 40, limitFlow_lph: 200 }), "metric");
  expect(meagre?.steps.join(" ")).toContain("shut some rows while you flush one after another");
});

test("who stands beside it is told what hurts", () => {
  expect(sheet?.cautions.join(" ")).toContain("Relieve the pressure before you open a fitting");
});

test("without sets there is nothing to check", () => {
  expect(firstRunSheet(planWith({ kind: "unknown" }), "metric")).toBeNull();
});
