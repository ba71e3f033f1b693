import { expect, test } from "vitest";
import { compassReadings } from "../../../src/core/exchange/compass-reading.ts";
import { magneticField } from "../../../src/core/plane/declination.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createBlock, createProject, testOrigin } from "../../support/create-project.ts";

function planWithBearing(bearing_deg: number) {
  return createPlanner().plan(createProject({ blocks: [createBlock({ bearing: { kind: "given", bearing_deg } })] }));
}

/** Declination hardly changes over a parcel. */
const overParcel_deg = 0.01;

test("a compass reads the true bearing less the declination, which is west of north here", () => {
  const field = magneticField(testOrigin, { year: 2027, month: 3, day: 15 });
  const answer = compassReadings(planWithBearing(40), "2027-03-15");
  if (!answer.ok || !field.ok) throw new Error("the model covers 2027");
  const [reading] = answer.readings;
  expect(field.field.declination_deg).toBeLessThan(-5);
  expect(Math.abs((reading?.reading_deg ?? 0) - (40 - field.field.declination_deg))).toBeLessThan(overParcel_deg);
});

test("past the half turn the reading starts again: a row is followed both ways", () => {
  const answer = compassReadings(planWithBearing(175), "2027-03-15");
  const reading_deg = answer.ok ? (answer.readings[0]?.reading_deg ?? Number.NaN) : Number.NaN;
  expect(reading_deg).toBeGreaterThan(0);
  expect(reading_deg).toBeLessThan(20);
});

test.each([
  ["2027-13-01", "not a day"],
  ["yesterday", "not a day"],
  ["2019-01-01", "before the model"],
  ["2031-01-01", "after the model"],
])("%s gives no reading: %s", (date, reason) => {
  expect(compassReadings(planWithBearing(0), date)).toEqual({ ok: false, reason });
});
