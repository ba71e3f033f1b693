import fc from "fast-check";
import { expect, test } from "vitest";
import { evennessOf, evennessOfRuns, headVariation, statisticalUniformity } from "../../../src/core/drip/evenness.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const digits = 9;

test("flows that are all equal lose only what manufacture varies by", () => {
  const job = createWateringJob({ rows: 1, vines: 4, drip: { emitterVariation_ratio: 0.05, emittersPerVine: 1 } });
  const even = evennessOf(job, [0], new Float64Array(4).fill(0.001));
  expect(even).toMatchObject({ emitters: 4, dry: 0, variation_ratio: 0 });
  expect(even.emission_ratio).toBeCloseTo(1 - 1.27 * 0.05, digits);
  expect(even.statistical_ratio).toBeCloseTo(0.95, digits);
});

test("two emitters at a vine even out what manufacture varies by", () => {
  const job = createWateringJob({ rows: 1, vines: 2, drip: { emitterVariation_ratio: 0.05, emittersPerVine: 2 } });
  const even = evennessOf(job, [0], new Float64Array(4).fill(0.001));
  expect(even.emission_ratio).toBeCloseTo(1 - (1.27 * 0.05) / Math.SQRT2, digits);
});

test("built-in emitters count as many to a vine as its spacing holds", () => {
  const job = createWateringJob({ rows: 1, vines: 4, vineSpacing_m: 2 });
  const [block] = job.blocks;
  if (block === undefined) throw new Error("no block");
  const drip = {
    ...block.drip,
    emitterPlacing: "in-line" as const,
    emitterSpacing_m: 0.5,
    emitterVariation_ratio: 0.1,
  };
  const even = evennessOfRuns([{ block: { ...block, drip }, from: 0, to: 4 }], new Float64Array(4).fill(0.001));
  expect(even.emission_ratio).toBeCloseTo(1 - (1.27 * 0.1) / 2, digits);
});

test("lowest, mean and highest are told, and the lowest against the mean is the emission uniformity", () => {
  const job = createWateringJob({ rows: 1, vines: 3, drip: { emitterVariation_ratio: 0 } });
  const even = evennessOf(job, [0], Float64Array.of(0.8, 1, 1.2));
  expect(even).toMatchObject({ lowest_lps: 0.8, highest_lps: 1.2 });
  expect(even.mean_lps).toBeCloseTo(1, digits);
  expect(even.emission_ratio).toBeCloseTo(0.8, digits);
  expect(even.variation_ratio).toBeCloseTo(1 / 3, digits);
});

test("emitters without water are counted, and nothing is even then", () => {
  const job = createWateringJob({ rows: 1, vines: 3 });
  expect(evennessOf(job, [0], Float64Array.of(0, 0.5, 0.5))).toMatchObject({ dry: 1, emission_ratio: 0 });
  expect(evennessOf(job, [0], new Float64Array(3))).toMatchObject({ dry: 3, emission_ratio: 0, statistical_ratio: 0 });
});

test("blocks with other emitters are compared by what each is to give", () => {
  const job = createWateringJob({
    rows: 1,
    blocks: 2,
    vines: 2,
    drip: { emitterFlow_lph: 2, emitterVariation_ratio: 0 },
    dripOfOthers: { emitterFlow_lph: 4 },
  });
  const flows = Float64Array.of(2 / 3600, 2 / 3600, 4 / 3600, 4 / 3600);
  const even = evennessOf(job, [0, 1], flows);
  expect(even.emission_ratio).toBeCloseTo(1, digits);
  expect(even.variation_ratio).toBeCloseTo(0, digits);
  expect(even.highest_lps).toBeCloseTo(4 / 3600, digits);
});

test("a lateral without emitters is even, with no flow", () => {
  const job = createWateringJob({ rows: 1, drip: { emittersPerVine: 0 } });
  expect(evennessOf(job, [0], new Float64Array())).toMatchObject({ emitters: 0, emission_ratio: 1, mean_lps: 0 });
});

test("evenness lies between nothing and all, and is the worse the wider flows are spread", () => {
  const job = createWateringJob({ rows: 1, vines: 6 });
  const flows = fc.array(fc.double({ min: 1e-4, max: 1e-2, noNaN: true }), { minLength: 6, maxLength: 6 });
  fc.assert(
    fc.property(flows, fc.double({ min: 1, max: 3, noNaN: true }), (list, stretch) => {
      const mean = list.reduce((sum, each) => sum + each, 0) / 6;
      const narrow = evennessOf(
        job,
        [0],
        Float64Array.from(list, (each) => mean + (each - mean) / (3 * stretch)),
      );
      const wide = evennessOf(
        job,
        [0],
        Float64Array.from(list, (each) => mean + (each - mean) / 3),
      );
      for (const { emission_ratio, statistical_ratio, variation_ratio } of [narrow, wide]) {
        for (const share of [emission_ratio, statistical_ratio, variation_ratio]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
        }
      }
      expect(narrow.emission_ratio).toBeGreaterThanOrEqual(wide.emission_ratio - 1e-12);
      expect(narrow.statistical_ratio).toBeGreaterThanOrEqual(wide.statistical_ratio - 1e-12);
      expect(narrow.variation_ratio).toBeLessThanOrEqual(wide.variation_ratio + 1e-12);
    }),
    { seed: 41, numRuns: 200 },
  );
});

test("the short and the long way from pressure to flow agree: 10 % of flow is 19 % of pressure at exponent a half", () => {
  expect(headVariation(0.1, 0.5)).toBeCloseTo(0.19, digits);
  expect(statisticalUniformity(0, 0)).toBe(1);
});
