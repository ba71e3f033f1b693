import fc from "fast-check";
import { expect, test } from "vitest";
import { type PackageSize, packagesFor } from "../../../src/core/materials/packages.ts";

/** Prices added up in another order. */
const near = 1e-6;

const bag = (size: number, price: number | null = null): PackageSize => ({ size, covers: size, price, mass_kg: null });

interface Chosen {
  readonly total: number;
  readonly count: number;
  readonly price: number;
}

/** Every way to buy up to so many of each size that covers the quantity, tried one by one. */
function allCovers(quantity: number, sizes: readonly PackageSize[]): readonly Chosen[] {
  const found: Chosen[] = [];
  const go = (at: number, total: number, count: number, price: number): void => {
    const size = sizes[at];
    if (size === undefined) {
      if (total >= quantity) found.push({ total, count, price });
      return;
    }
    for (let many = 0; many <= Math.ceil(quantity / size.covers); many++) {
      go(at + 1, total + many * size.covers, count + many, price + many * (size.price ?? 0));
    }
  };
  go(0, 0, 0, 0);
  return found;
}

function chosen(quantity: number, sizes: readonly PackageSize[]): Chosen {
  return packagesFor(quantity, sizes, "pieces").reduce(
    (sum, { size, count, price }) => ({
      total: sum.total + size * count,
      count: sum.count + count,
      price: sum.price + count * (price ?? 0),
    }),
    { total: 0, count: 0, price: 0 },
  );
}

test("200 and 500 clips to a bag: 1565 clips are two bags of 500 and three of 200", () => {
  expect(packagesFor(1565, [bag(200), bag(500)], "pieces")).toEqual([
    { size: 500, count: 2, price: null, mass_kg: null },
    { size: 200, count: 3, price: null, mass_kg: null },
  ]);
});

test("a bag that is too large is bought when it is cheaper than those that fit", () => {
  expect(packagesFor(150, [bag(100, 10), bag(1000, 15)], "pieces")).toEqual([
    { size: 1000, count: 1, price: 15, mass_kg: null },
  ]);
});

test("sizes without a price are passed over where others have one; a price of 0 is one", () => {
  expect(packagesFor(3, [bag(3), bag(1, 2)], "pieces")).toMatchObject([{ size: 1, count: 3 }]);
  expect(packagesFor(3, [bag(3), bag(1, 0)], "pieces")).toMatchObject([{ size: 1, count: 3, price: 0 }]);
});

test("nothing, or less than nothing, needs no package; without a size there is none", () => {
  expect(packagesFor(0, [bag(5)], "pieces")).toEqual([]);
  expect(packagesFor(-40, [bag(5)], "pieces")).toEqual([]);
  expect(packagesFor(7, [], "pieces")).toEqual([]);
  expect(packagesFor(7, [{ ...bag(5), covers: -1 }], "pieces")).toEqual([]);
});

test("coils that fill up exactly take no coil more", () => {
  const coil = { size: 304.8, covers: 304.8, price: null, mass_kg: null };
  expect(packagesFor(3 * 304.8, [coil], "m")).toMatchObject([{ count: 3 }]);
  expect(packagesFor(3 * 304.8 + 0.02, [coil], "m")).toMatchObject([{ count: 4 }]);
});

test("a million clips are covered as exactly as a hundred", () => {
  const bags = [bag(200, 9), bag(500, 20), bag(1, 0.2)];
  expect(chosen(1_000_201, bags)).toMatchObject({ total: 1_000_201 });
  expect(chosen(1_000_201, bags).price).toBeCloseTo(2000 * 20 + 9 + 0.2, 6);
});

const sizes = (price: fc.Arbitrary<number | null>) =>
  fc.array(
    fc.record({ size: fc.integer({ min: 1, max: 30 }), price }).map(({ size, price }) => bag(size, price)),
    { minLength: 1, maxLength: 3 },
  );

test("no other choice of priced packages covers it for less", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      sizes(fc.integer({ min: 0, max: 4000 }).map((cents) => cents / 100)),
      (quantity, offers) => {
        const least = Math.min(...allCovers(quantity, offers).map(({ price }) => price));
        const bought = chosen(quantity, offers);
        expect(bought.total).toBeGreaterThanOrEqual(quantity);
        expect(Math.abs(bought.price - least)).toBeLessThanOrEqual(near);
      },
    ),
    { seed: 16_15, numRuns: 500 },
  );
});

test("without prices no other choice leaves less over, and none with as little has fewer packages", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), sizes(fc.constant(null)), (quantity, offers) => {
      const all = allCovers(quantity, offers);
      const total = Math.min(...all.map((each) => each.total));
      const count = Math.min(...all.filter((each) => each.total === total).map((each) => each.count));
      expect(chosen(quantity, offers)).toMatchObject({ total, count });
    }),
    { seed: 16_16, numRuns: 500 },
  );
});
