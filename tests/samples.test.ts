import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { createPlanner, hasError, parseProject } from "../src/core/index.ts";
import { validatePlan } from "../src/core/validate-plan.ts";
import { expectedFiles, sampleNames, samplePath } from "./support/sample-plans.ts";

function planOf(sample: string) {
  const read = parseProject(readFileSync(samplePath(sample, "project.geojson"), "utf8"));
  if (!read.ok) throw new Error(`${sample} is no project`);
  return createPlanner().plan(read.value);
}

test("there are three samples and the acre with the notch comes first", () => {
  expect(sampleNames()).toEqual(["acre-with-notch", "brook-and-two-blocks", "crooked-strip"]);
});

describe.each(sampleNames())("sample %s", (sample) => {
  test("plans as its expected files say (after a meant change: npm run regen, then review the difference)", () => {
    for (const [name, text] of Object.entries(expectedFiles(sample))) {
      expect(text, name).toBe(readFileSync(samplePath(sample, "expected", name), "utf8"));
    }
  });

  test("has no error, rows, vines and a sound plan", () => {
    const plan = planOf(sample);
    expect(hasError(plan.findings)).toBe(false);
    expect(plan.rows?.rows.length).toBeGreaterThan(3);
    expect(validatePlan(plan)).toEqual([]);
  });

  test("says that it is invented", () => {
    expect(readFileSync(samplePath(sample, "about.md"), "utf8")).toMatch(/^# .+\n\n[\s\S]*invented/);
  });
});

test("the acre with the notch has half a hectare, an oak that splits a row, a source and two plantings", () => {
  const plan = planOf("acre-with-notch");
  expect(plan.project.units).toBe("us");
  expect(plan.ground?.parcelArea_m2).toBeGreaterThan(4500);
  expect(plan.ground?.parcelArea_m2).toBeLessThan(5500);
  expect(
    plan.rows?.rows.filter((row) => row.startCut?.feature === "oak" || row.endCut?.feature === "oak").length,
  ).toBeGreaterThan(1);
  expect(plan.rows?.rows.some((row) => /b$/.test(row.id))).toBe(true);
  expect(plan.materials?.lines.filter((line) => line.article.startsWith("vine-Invented")).length).toBe(2);
  expect(plan.materials?.lines.filter((line) => line.onHand > 0).map((line) => line.article)).toEqual([
    "wire-13ga",
    "stake-1.524m",
  ]);
});

test("the brook's sample lies south of the equator, has two blocks, a standing row, and rows cut by brook and alley", () => {
  const plan = planOf("brook-and-two-blocks");
  const cuts = new Set(plan.rows?.rows.flatMap((row) => [row.startCut?.feature, row.endCut?.feature]));
  expect(plan.ground?.frame.origin[1]).toBeLessThan(0);
  expect(plan.rows?.blocks.map((block) => block.block)).toEqual(["west", "east"]);
  expect(plan.rows?.rows.filter((row) => row.given !== null)).toHaveLength(1);
  expect(cuts).toContain("brook");
  expect(cuts).toContain("alley");
  expect(plan.trellis?.blocks.map(({ end }) => end.kind)).toEqual(["leaning", "leaning"]);
});

test("the crooked strip breaks lines into pieces", () => {
  const plan = planOf("crooked-strip");
  const lines = new Set(plan.rows?.rows.map((row) => row.number));
  expect(lines.size).toBeLessThan(plan.rows?.rows.length ?? 0);
});
