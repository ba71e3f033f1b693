import { expect, test } from "vitest";
import { nearestName } from "../../../src/core/project/nearest-name.ts";

const known = ["rowSpacing", "vineSpacing", "headland", "parcel", "no-plant", "east"];

test.each([
  ["row_spacing", "rowSpacing"],
  ["ROW SPACING", "rowSpacing"],
  ["rowspaceing", "rowSpacing"],
  ["vinespacing", "vineSpacing"],
  ["haedland", "headland"],
  ["esat", "east"],
  ["noplant", "no-plant"],
  ["oak", null],
  ["", null],
  ["x".repeat(10_000), null],
])("%s is likely %s", (typed, meant) => {
  expect(nearestName(typed, known)).toBe(meant);
});
