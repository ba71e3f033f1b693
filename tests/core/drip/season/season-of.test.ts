import fc from "fast-check";
import { expect, test } from "vitest";
import { referenceEvapotranspiration } from "../../../../src/core/drip/season/reference-evapotranspiration.ts";
import { seasonOf } from "../../../../src/core/drip/season/season-of.ts";
import type { BlockSeason, SeasonMonth } from "../../../../src/core/drip/watering.ts";
import { usualSeason } from "../../../../src/core/project/water-defaults.ts";
import type { Monthly } from "../../../../src/core/project/water-settings.ts";
import { createWaterSet } from "../../../support/create-water-set.ts";
import { createWateringJob, type WateringSketch } from "../../../support/create-watering-job.ts";

const everyMonth = (value: number): Monthly => Array.from({ length: 12 }, () => value);
/** Invented: a dry summer. */
const reference_mmpd: Monthly = [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1];
/** No soil, no rain, everything given: what is left is the need. */
const bare = { reference_mmpd, soil_mmpm: 0, usualShare_ratio: 1 };
const dry = { blocks: [null, null], sets: [] };

function seasons(sketch: WateringSketch, watering: Parameters<typeof seasonOf>[1] = dry): readonly BlockSeason[] {
  return seasonOf(createWateringJob(sketch), watering) ?? [];
}

function july(sketch: WateringSketch, watering?: Parameters<typeof seasonOf>[1]): SeasonMonth {
  const found = seasons(sketch, watering)[0]?.months[6];
  if (found === undefined) throw new Error("a year has its July");
  return found;
}

const { evenness } = createWaterSet();
const set = (laterals: readonly number[]) => createWaterSet({ laterals });

test("nothing is said of a year whose evapotranspiration is not known", () => {
  expect(seasonOf(createWateringJob(), dry)).toBeNull();
});

test("a vine on 3 by 2 m in July needs 6.5 mm by 0.7 over 6 m², and more by the evenness that is asked for", () => {
  const month = july({ season: bare, drip: { evenness_ratio: 0.9 } });
  expect(month.crop).toBeCloseTo(0.7, 12);
  expect(month.peak_lpw).toBeCloseTo((6.5 * 0.7 * 6 * 7) / 0.9, 9);
  // 80 vines, and one emitter of 2 L/h at each.
  expect(month.peak_lpd).toBeCloseTo((6.5 * 0.7 * 6 * 80) / 0.9, 9);
  expect(month.peak_h).toBeCloseTo((6.5 * 0.7 * 6) / 0.9 / 2, 9);
  expect(month.all_h).toBe(month.peak_h);
});

test("usual and peak differ by what the person gives of the full need; young vines need their share", () => {
  const month = july({ season: { ...bare, usualShare_ratio: 0.4, young_ratio: 0.25 } });
  expect(month.usual_lpw / month.peak_lpw).toBeCloseTo(0.4, 12);
  expect(month.young_lpw / month.peak_lpw).toBeCloseTo(0.25, 12);
  expect(month.usual_h / month.peak_h).toBeCloseTo(0.4, 12);
});

test("the month that needs most is the peak, and the year is the sum of its months' days", () => {
  const [season] = seasons({ season: bare });
  expect(season?.peak.month).toBe(7);
  const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const sum_l = season?.months.reduce((sum, { peak_lpd }, i) => sum + peak_lpd * Number(days[i]), 0);
  expect(season?.full_l).toBeCloseTo(Number(sum_l), 6);
});

test("with sets their own flow and evenness count, and all of them run one after another", () => {
  const blocks = [evenness];
  const month = july({ season: bare }, { blocks, sets: [set([0, 1]), set([2, 3])] });
  expect(month.peak_lpw).toBeCloseTo((6.5 * 0.7 * 6 * 7) / 0.8, 9);
  expect(month.peak_h).toBeCloseTo((6.5 * 0.7 * 6) / 0.8 / 1.9, 9);
  expect(month.all_h).toBeCloseTo(2 * month.peak_h, 9);
  expect(month.usualAll_h).toBeCloseTo(2 * month.usual_h, 9);
});

test("a set with rows of two blocks runs as long as the one that needs longer", () => {
  const sketch: WateringSketch = { season: bare, rows: 2, blocks: 2, dripOfOthers: { emitterFlow_lph: 1 } };
  const watering = { blocks: [null, null], sets: [set([0, 1, 2]), set([3])] };
  const [one, two] = seasons(sketch, watering).map(({ months }) => months[6]);
  expect(Number(two?.peak_h)).toBeCloseTo(2 * Number(one?.peak_h), 9);
  expect(one?.all_h).toBeCloseTo(2 * Number(two?.peak_h), 9);
});

test("two emitters at a vine halve the hours and leave the litres as they are", () => {
  const [one, two] = [1, 2].map((emittersPerVine) => july({ season: bare, drip: { emittersPerVine } }));
  expect(two?.peak_lpw).toBeCloseTo(Number(one?.peak_lpw), 9);
  expect(two?.peak_h).toBeCloseTo(Number(one?.peak_h) / 2, 9);
});

test("salt to wash out and rain change what is given", () => {
  const plain = july({ season: bare });
  expect(july({ season: { ...bare, leaching_ratio: 0.2 } }).peak_lpw).toBeCloseTo(plain.peak_lpw / 0.8, 9);
  const wet = july({ season: { ...bare, rain_mm: everyMonth(40), rainShare_ratio: 0.75 } });
  expect(wet.peak_lpw).toBeCloseTo((plain.peak_lpw * (6.5 * 0.7 * 31 - 30)) / (6.5 * 0.7 * 31), 9);
});

test("in the southern half of the earth the season goes over the turn of the year", () => {
  const south = everyMonth(5).map((each, i) => each + 2 * Math.cos((2 * Math.PI * i) / 12));
  const [season] = seasons({ season: { ...bare, reference_mmpd: south, stages: [9.5, 12, 2.5, 5] } });
  const given = season?.months.map(({ peak_lpw }) => peak_lpw > 0);
  expect(given).toEqual([true, true, true, true, false, false, false, false, true, true, true, true]);
  expect(season?.firstWatering).toBeCloseTo(9.5, 12);
  expect(season?.peak.month).toBe(1);
});

test("a soil that is full in spring puts the first watering off and takes nothing from the peak", () => {
  const [bareSoil] = seasons({ season: bare });
  const [deep] = seasons({ season: { ...bare, soil_mmpm: usualSeason.soil_mmpm } });
  expect(bareSoil?.firstWatering).toBeCloseTo(4, 12);
  expect(Number(deep?.firstWatering)).toBeGreaterThan(4.5);
  expect(deep?.peak.peak_lpw).toBe(bareSoil?.peak.peak_lpw);
});

test("whatever the season, every number is one, shares keep their order and the year is the sum of its months", () => {
  const monthly = (min: number, max: number) =>
    fc.array(fc.double({ min, max, noNaN: true }), { minLength: 12, maxLength: 12 });
  const stage = fc.double({ min: 1, max: 13, noNaN: true });
  const ratio = fc.double({ min: 0, max: 1, noNaN: true });
  const season = fc.record({
    reference_mmpd: monthly(0, 12),
    rain_mm: fc.oneof(fc.constant(null), monthly(0, 300)),
    stages: fc.tuple(stage, stage, stage, stage),
    usualShare_ratio: ratio,
    young_ratio: ratio,
    soil_mmpm: fc.double({ min: 0, max: 200, noNaN: true }),
    shaded_ratio: fc.oneof(fc.constant(null), ratio),
  });
  fc.assert(
    fc.property(season, fc.boolean(), (stated, isWatered) => {
      const sets = isWatered ? [createWaterSet({ laterals: [0, 1] }), createWaterSet({ laterals: [2, 3] })] : [];
      const [found] = seasons({ season: stated }, { blocks: [isWatered ? evenness : null], sets });
      if (found === undefined) throw new Error("the season is known");
      for (const month of found.months) {
        for (const each of Object.values(month)) expect(Number.isFinite(each) && each >= 0).toBe(true);
        expect(month.usual_lpw).toBeLessThanOrEqual(month.peak_lpw + 1e-9);
        expect(month.usualAll_h).toBeLessThanOrEqual(month.all_h + 1e-9);
        expect(month.peak_lpw).toBeLessThanOrEqual(found.peak.peak_lpw);
      }
      if (found.firstWatering !== null) expect(found.firstWatering >= 1 && found.firstWatering < 13).toBe(true);
      else expect(found.full_l).toBe(0);
      expect(found.usual_l).toBeLessThanOrEqual(found.full_l + 1e-6);
    }),
    { seed: 63, numRuns: 200 },
  );
});

/* Reference evapotranspiration. */

const place = { latitude_deg: 45.717, height_m: 200 };
const warm = { ...usualSeason, lowest_c: everyMonth(14.8), highest_c: everyMonth(26.6) };

test("what is stated goes before temperatures, and one of the two temperatures says nothing", () => {
  expect(referenceEvapotranspiration({ ...warm, reference_mmpd }, place)).toBe(reference_mmpd);
  expect(referenceEvapotranspiration({ ...warm, highest_c: null }, place)).toBeNull();
});

// FAO-56 example 20, from memory: 4.56 mm a day by eq. 6 and 5.0 by eq. 52.
test("July of Lyon comes out by either way", () => {
  expect(referenceEvapotranspiration(warm, place)?.[6]).toBeCloseTo(4.56, 1);
  expect(referenceEvapotranspiration({ ...warm, method: "hargreaves" }, place)?.[6]).toBeCloseTo(5.04, 1);
});

test("north and south of the equator the year is turned by half, but for the earth's nearness to the sun", () => {
  const north = referenceEvapotranspiration(warm, { ...place, latitude_deg: 40 }) ?? [];
  const south = referenceEvapotranspiration(warm, { ...place, latitude_deg: -40 }) ?? [];
  north.forEach((each_mm, i) => {
    expect(Math.abs(each_mm / Number(south[(i + 6) % 12]) - 1)).toBeLessThan(0.13);
  });
});

test("in the polar night nothing is given off, and nothing is not a number", () => {
  const cold = { ...usualSeason, lowest_c: everyMonth(-30), highest_c: everyMonth(-20) };
  for (const method of ["penman-monteith", "hargreaves"] as const) {
    const months = referenceEvapotranspiration({ ...cold, method }, { latitude_deg: 80, height_m: 0 }) ?? [];
    expect(months.every((each_mm) => each_mm >= 0)).toBe(true);
    expect(Number(months[11])).toBeLessThan(0.2);
  }
});
