import fc from "fast-check";
import { expect, test } from "vitest";
import { givenBySoil, type SoilMonth } from "../../../../src/core/drip/season/soil-store.ts";

const full = { usual: 1, peak: 1, young: 0.3 };

function month(number: number, need_mm: number, rain_mm = 0): SoilMonth {
  return { month: number, from: number, to: number + 1, need_mm, rain_mm };
}

test("the soil's store goes first, and the month in which it is used up is watered from that day on", () => {
  const { months, firstWatering } = givenBySoil([month(4, 40), month(5, 80), month(6, 100)], 60, full);
  expect(months.map(({ fromSoil_mm }) => fromSoil_mm)).toEqual([40, 20, 0]);
  expect(months.map(({ peak_mm }) => peak_mm)).toEqual([0, 60, 100]);
  // 20 mm of May's 80 are there: a quarter of May.
  expect(firstWatering).toBeCloseTo(5.25, 12);
});

test("rain goes before the soil, and what is more than the need fills the soil up, never above full", () => {
  const { months } = givenBySoil([month(4, 50, 10), month(5, 20, 100), month(6, 90)], 60, full);
  expect(months.map(({ fromSoil_mm }) => fromSoil_mm)).toEqual([40, 0, 60]);
  expect(months[1]?.peak_mm).toBe(0);
  expect(months[2]?.peak_mm).toBeCloseTo(30, 12);
});

test("who gives a share of the need counts the rain as part of that share", () => {
  const { months } = givenBySoil([month(7, 100, 20)], 0, { usual: 0.5, peak: 1, young: 0.3 });
  expect(months[0]).toMatchObject({ usual_mm: 30, peak_mm: 80, young_mm: 10 });
});

test("young vines draw nothing from the soil's store", () => {
  const { months } = givenBySoil([month(4, 40)], 60, full);
  expect(months[0]).toMatchObject({ peak_mm: 0, young_mm: 12 });
});

test("where rain and soil are enough nothing is ever given", () => {
  expect(givenBySoil([month(4, 40, 10), month(5, 40, 30)], 60, full).firstWatering).toBeNull();
});

test("given, rain and soil make up the full need, and a fuller soil never asks for more", () => {
  const depth = fc.double({ min: 0, max: 200, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(depth, depth), { minLength: 1, maxLength: 12 }),
      depth,
      depth,
      (pairs, store, more) => {
        const season = pairs.map(([need, rain], i) => month(i + 1, need, rain));
        const { months } = givenBySoil(season, store, full);
        months.forEach(({ peak_mm, fromSoil_mm }, i) => {
          const [need_mm = 0, rain_mm = 0] = pairs[i] ?? [];
          expect(Math.abs(peak_mm + fromSoil_mm - Math.max(0, need_mm - rain_mm))).toBeLessThan(1e-9);
        });
        const total = (given: typeof months) => given.reduce((sum, { peak_mm }) => sum + peak_mm, 0);
        expect(total(givenBySoil(season, store + more, full).months)).toBeLessThanOrEqual(total(months) + 1e-9);
      },
    ),
    { seed: 62 },
  );
});
