import { expect, test } from "vitest";
import { type Advice, adviceOf } from "../../../src/core/drip/advice.ts";
import { adviceNumbers } from "../../../src/core/drip/advice-numbers.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSettings } from "../../../src/core/project/edits.ts";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { readSample } from "../../support/sample-plans.ts";

type Edits = readonly (readonly [path: string, value: Json])[];

const planner = createPlanner();

function changed(project: Project, edits: Edits): Project {
  const outcome = withSettings(project, edits);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => text(message, "metric")).join("; "));
  return outcome.value;
}

/** The first sample with water that falls short, invented. */
const short = changed(readSample("acre-with-notch"), [
  ["water.pump", null],
  ["water.leastFlow", null],
  ["water.recovery", null],
  ["water.kind", "town"],
  ["water.staticPressure", "25 psi"],
  ["water.limitFlow", "2 gal/min"],
  ["water.hoursADay", 6],
  ["sets.count", 2],
  ["drip.emitterKind", "plain"],
  ["season.reference", [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1]],
  ["season.usualShare", 0.15],
  ["season.peakShare", 0.25],
]);

function adviceFor(project: Project): readonly Advice[] {
  const watered = planner.plan(project).watering;
  if (watered === null) throw new Error("the sample is watered");
  return adviceOf(watered.job, watered.watering, waterRows);
}

test("who accepts a piece of advice gets the very plan that it told of", () => {
  const all = adviceFor(short);
  expect(all.length).toBeGreaterThan(2);
  for (const { id, edits, after } of all) {
    const watered = planner.plan(changed(short, edits)).watering;
    const got = watered === null ? null : adviceNumbers(watered.job, watered.watering);
    expect(got?.sets, id).toBe(after.sets);
    expect(Number(got?.spare_m), id).toBeCloseTo(after.spare_m, 6);
    expect(Number(got?.peak_h), id).toBeCloseTo(Number(after.peak_h), 6);
    expect(Number(got?.evenness_ratio), id).toBeCloseTo(after.evenness_ratio, 9);
  }
});
