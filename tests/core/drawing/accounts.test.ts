import { describe, expect, test } from "vitest";
import {
  areaWithinAccount,
  sideBearingAccount,
  sideLengthAccount,
  tapeDifferenceAccount,
  wayLengthAccount,
} from "../../../src/core/drawing/accounts.ts";
import { measurePath } from "../../../src/core/drawing/measure.ts";
import { at, testFrame } from "../../support/create-project.ts";
import { createRandom } from "../../support/random.ts";

/** What doubles leave of a kilometre. */
const rounding = 1e-6;

const random = createRandom(11);
const ways = Array.from({ length: 20 }, () =>
  Array.from({ length: 7 }, () => at([800 * random() - 400, 800 * random() - 400])),
);

describe("what drawing measures tells how it came about", () => {
  test("every side's length and bearing, and the way and the area of them all, follow from the numbers told", () => {
    for (const corners of ways) {
      const measured = measurePath(testFrame, corners, true);
      measured.sides.forEach(({ length_m, bearing_deg }, i) => {
        const [from, to] = [corners[i], corners[(i + 1) % corners.length]];
        if (!from || !to) throw new Error("a side without ends");
        expect(sideLengthAccount(testFrame, from, to).value).toBeCloseTo(length_m, 9);
        expect(sideBearingAccount(testFrame, from, to).value).toBeCloseTo(bearing_deg, 9);
      });
      expect(wayLengthAccount(testFrame, corners, true).value).toBeCloseTo(measured.length_m, 9);
      expect(wayLengthAccount(testFrame, corners, false).value).toBeCloseTo(
        measurePath(testFrame, corners, false).length_m,
        9,
      );
      const area_m2 = areaWithinAccount(testFrame, corners).value ?? Number.NaN;
      expect(Math.abs(area_m2 - (measured.area_m2 ?? 0))).toBeLessThan(rounding);
    }
  });

  test("a side 0.8 m shorter than the tape is told as such", () => {
    expect(tapeDifferenceAccount(30.4, 31.2).value).toBeCloseTo(-0.8, 12);
  });
});
