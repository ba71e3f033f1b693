import { expect, it } from "vitest";
import { pricedSizes } from "../../../src/core/drip/priced-sizes.ts";
import { pipeFamilies } from "../../../src/core/project/water-settings.ts";

const entry = (size: string, pieces: number, price: number | null) => ({
  article: `main-pipe-${size}`,
  size: pieces,
  price,
  mass_kg: null,
  note: null,
});

const pn6 = [40, 50, 63, 75, 90, 110].map((nominal) => `pvc-pn6-${nominal}mm`);

it("every family has sizes, the narrowest first, each dearer and wider than the one before", () => {
  for (const family of pipeFamilies) {
    const sizes = pricedSizes(family, { prices: [] });
    expect(sizes.length).toBeGreaterThan(5);
    for (const [i, each] of sizes.entries()) {
      expect(each.size.startsWith(family)).toBe(true);
      expect(each.rating_kpa).toBeGreaterThan(0);
      expect(each.inside_mm).toBeGreaterThan(sizes[i - 1]?.inside_mm ?? 0);
      expect(each.cost_pm).toBeGreaterThan(sizes[i - 1]?.cost_pm ?? 0);
    }
  }
});

it("without prices a metre counts the mass of its wall: 2 in Schedule 40 weighs about 1 kg a metre", () => {
  const twoInch = pricedSizes("pvc-40", { prices: [] }).find(({ size }) => size === "pvc-40-2in");
  expect(Math.abs(Number(twoInch?.cost_pm) - 1.02)).toBeLessThan(0.05);
});

it("with the whole family priced a metre counts its price, out of the cheapest package", () => {
  const prices = [...pn6.map((size, i) => entry(size, 1, 12 * (i + 1))), entry("pvc-pn6-40mm", 10, 60)];
  const costs = pricedSizes("pvc-pn6", { prices }).map(({ cost_pm }) => Math.round(cost_pm * 1e9) / 1e9);
  // Sticks of 6 m: 12 for one, 60 for ten.
  expect(costs).toEqual([1, 4, 6, 8, 10, 12]);
});

it("with one size unpriced none of the family goes by price", () => {
  const prices = pn6.slice(1).map((size) => entry(size, 1, 600));
  expect(Math.max(...pricedSizes("pvc-pn6", { prices }).map(({ cost_pm }) => cost_pm))).toBeLessThan(10);
  const unpriced = [...prices, entry("pvc-pn6-40mm", 1, null)];
  expect(Math.max(...pricedSizes("pvc-pn6", { prices: unpriced }).map(({ cost_pm }) => cost_pm))).toBeLessThan(10);
});
