import fc from "fast-check";
import { expect, test } from "vitest";
import {
  cropCurve,
  fullLeafCoefficient,
  isOneSeason,
  meanCoefficient,
  stagesInOrder,
} from "../../../../src/core/drip/season/crop-curve.ts";
import { usualSeason } from "../../../../src/core/project/water-defaults.ts";

const curve = cropCurve(usualSeason);

test("vines need nothing before bud break and after leaf fall", () => {
  expect(meanCoefficient(curve, 2, 3)).toBe(0);
  expect(meanCoefficient(curve, 11, 12)).toBe(0);
});

test("the coefficient rises from bud break to full leaf, stays, and falls until the leaves fall", () => {
  // Half-way between bud break in April (0.3) and full leaf in June (0.7) it is 0.5.
  expect(meanCoefficient(curve, 4.9, 5.1)).toBeCloseTo(0.5, 12);
  expect(meanCoefficient(curve, 4, 5)).toBeCloseTo(0.4, 12);
  expect(meanCoefficient(curve, 7, 8)).toBeCloseTo(0.7, 12);
  // From the middle of August (0.7) to the end of October (0.45): September lies between 0.65 and 0.55.
  expect(meanCoefficient(curve, 9, 10)).toBeCloseTo(0.6, 12);
});

test("a month in which the buds break half-way counts the days before as nothing", () => {
  const late = cropCurve({ ...usualSeason, stages: [4.5, 6, 8.5, 11] });
  expect(meanCoefficient(late, 4, 5)).toBeCloseTo(0.5 * meanCoefficient(late, 4.5, 5), 12);
});

test("a season over the turn of the year goes on in the year after", () => {
  expect(stagesInOrder([9.5, 12, 2.5, 5])).toEqual([9.5, 12, 14.5, 17]);
  expect(isOneSeason([9.5, 12, 2.5, 5])).toBe(true);
});

test("stages in no order at all are taken in that of the calendar", () => {
  expect(isOneSeason([8, 4, 11, 6])).toBe(false);
  expect(cropCurve({ ...usualSeason, stages: [8, 4, 11, 6] }).months).toEqual([4, 6, 8, 11]);
});

test("ground shaded at noon takes the place of the coefficient in full leaf, and nothing is above it", () => {
  expect(fullLeafCoefficient({ ...usualSeason, shaded_ratio: 0.1 })).toBeCloseTo(0.172, 12);
  for (const each of cropCurve({ ...usualSeason, shaded_ratio: 0.1 }).coefficients) expect(each).toBeCloseTo(0.172, 12);
});

test("means of parts add up to the mean of the whole, and none is above full leaf", () => {
  const moment = fc.double({ min: 1, max: 26, noNaN: true });
  const stage = fc.double({ min: 1, max: 12.9, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(stage, stage, stage, stage), moment, moment, moment, (stages, ...moments) => {
      const of = cropCurve({ ...usualSeason, stages });
      const [a = 0, b = 0, c = 0] = moments.sort((one, other) => one - other);
      const whole = meanCoefficient(of, a, c) * (c - a);
      const parts = meanCoefficient(of, a, b) * (b - a) + meanCoefficient(of, b, c) * (c - b);
      expect(Math.abs(whole - parts)).toBeLessThan(1e-9);
      expect(meanCoefficient(of, a, c)).toBeLessThanOrEqual(0.7 + 1e-12);
      expect(meanCoefficient(of, a, c)).toBeGreaterThanOrEqual(0);
    }),
    { seed: 61 },
  );
});
