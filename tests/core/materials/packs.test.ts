import fc from "fast-check";
import { expect, test } from "vitest";
import { orderOf, packsOf } from "../../../src/core/materials/packs.ts";

const dust_share = 1e-9;

test("check 9-4: 165 posts with six wires and 2 % spare are three bags of 500 clips", () => {
  // Calculation handbook, section 9.
  expect(packsOf(orderOf(165 * 6, 0.02), 500)).toEqual([{ size: 500, count: 3 }]);
});

test("a spare that comes out whole is not rounded up by floating dust", () => {
  expect(orderOf(100, 0.1)).toBe(110);
  expect(orderOf(101, 0.1)).toBe(112);
});

test("a quantity that fills its coils exactly takes no coil more", () => {
  expect(packsOf(3 * 304.8, 304.8)).toEqual([{ size: 304.8, count: 3 }]);
  expect(packsOf(0.1 + 0.2, 0.3)).toEqual([{ size: 0.3, count: 1 }]);
});

test("nothing needs no package", () => {
  expect(packsOf(0, 500)).toEqual([]);
});

test("packages cover the quantity and one package less is short", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 100_000, noNaN: true }),
      fc.double({ min: 0.5, max: 2000, noNaN: true }),
      (quantity, size) => {
        const count = packsOf(quantity, size)[0]?.count ?? 0;
        expect(count * size).toBeGreaterThanOrEqual(quantity - size * dust_share);
        expect((count - 1) * size).toBeLessThan(quantity);
      },
    ),
    { seed: 20_31, numRuns: 2000 },
  );
});
