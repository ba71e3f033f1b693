import { expect, test } from "vitest";
import { heightDifferenceAccount, heightRange } from "../../../src/core/ground/height-accounts.ts";

test("the range of heights leaves out what is not known, and counts 0 as a height", () => {
  expect(heightRange([3, Number.NaN, 0, -2])).toEqual({ lowest_m: -2, highest_m: 3, known: 3 });
  expect(heightRange([0])).toEqual({ lowest_m: 0, highest_m: 0, known: 1 });
  expect(heightRange([Number.NaN])).toBeNull();
  expect(heightRange([])).toBeNull();
});

test("the difference of heights is reckoned from the two that are told", () => {
  const told = heightDifferenceAccount(201, 218.4, "7 spot heights");
  expect(told.value).toBeCloseTo(17.4, 9);
  expect(told.inputs.map(({ name }) => name)).toEqual(["Highest", "Lowest", "Heights"]);
});
