import { describe, expect, it } from "vitest";
import { tautBetween } from "../../../src/core/mainline/taut.ts";
import { between, createRandom } from "../../support/random.ts";

const length_m = (at: readonly number[], height: readonly number[]): number =>
  at.slice(1).reduce((sum, x, i) => sum + Math.hypot(x - (at[i] ?? 0), (height[i + 1] ?? 0) - (height[i] ?? 0)), 0);

describe("a string pulled taut through gates", () => {
  it("is straight where the gates let it", () => {
    expect(tautBetween([0, 1, 2, 3], [0, -1, -1, 3], [0, 5, 5, 3])).toEqual([0, 1, 2, 3]);
  });

  it("bends round the peaks of the lower side only, and does not go down into what lies between", () => {
    expect(tautBetween([0, 1, 2, 3, 4], [0, 2, 0, 2, 0], [0, 9, 9, 9, 0])).toEqual([0, 2, 2, 2, 0]);
  });

  it("bends round the upper side too", () => {
    expect(tautBetween([0, 1, 2], [0, -9, 0], [0, -1, 0])).toEqual([0, -1, 0]);
  });

  it("keeps to its gates and is no longer than any of 2,000 other lines through them", () => {
    const random = createRandom(7);
    const at = Array.from({ length: 9 }, (_, i) => i * 2.4);
    const low = at.map(() => between(random, 0, 2));
    const high = low.map((height, i) => (i === 0 || i === 8 ? height : height + between(random, 0, 2)));
    const taut = tautBetween(at, low, high);
    taut.forEach((height, i) => {
      expect(height).toBeGreaterThanOrEqual((low[i] ?? 0) - 1e-9);
      expect(height).toBeLessThanOrEqual((high[i] ?? 0) + 1e-9);
    });
    for (let n = 0; n < 2000; n++) {
      const other = low.map((height, i) => between(random, height, high[i] ?? height));
      expect(length_m(at, taut)).toBeLessThanOrEqual(length_m(at, other) + 1e-9);
    }
  });
});
