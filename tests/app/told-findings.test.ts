import { expect, test } from "vitest";
import { beginProject } from "../../src/app/commands/begin-project.ts";
import { newProject } from "../../src/app/commands/new-project.ts";
import { createStore } from "../../src/app/store.ts";
import { findingsInWords, findingsOf, toldFindings } from "../../src/app/strip/told-findings.ts";
import { isBlank } from "../../src/core/drawing/blank.ts";
import { readSample } from "../support/sample-plans.ts";

test("an empty map is a beginning: no error is told, no step is marked", () => {
  const store = createStore();
  newProject(store, "metric");
  const plan = store.plan.value;
  if (!plan) throw new Error("no plan");
  expect(isBlank(plan.project)).toBe(true);
  expect(toldFindings(plan).filter(({ severity }) => severity !== "note")).toEqual([]);
});

test("a sample is no beginning; its findings are told worst first, each at the step it is of", () => {
  const store = createStore();
  beginProject(store, readSample("brook-and-two-blocks"));
  const plan = store.plan.value;
  if (!plan) throw new Error("no plan");
  expect(isBlank(plan.project)).toBe(false);
  const told = toldFindings(plan);
  expect(told).toHaveLength(plan.findings.length);
  const order = told.map(({ severity }) => ["error", "warning", "note"].indexOf(severity));
  expect(order).toEqual([...order].sort());
  const stages = ["ground", "rows", "mainline", "trellis", "drip", "materials"] as const;
  expect(stages.flatMap((stage) => findingsOf(plan, stage))).toHaveLength(told.length);
  expect(findingsInWords([])).toBeNull();
});
