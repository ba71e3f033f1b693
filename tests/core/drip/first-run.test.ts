import { expect, test } from "vitest";
import { firstRun } from "../../../src/core/drip/first-run.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const flowOf = (pressures: readonly number[]) => Float64Array.from(pressures, (each) => each / 10_000);

test("every set is checked at the lateral with the lowest pressure and at the one with the highest", () => {
  const job = createWateringJob({ rows: 4, vines: 3 });
  const pressures = [10, 9.8, 9.7, 9, 8.9, 8.8, 12, 11, 10.9, 8, 8, 8];
  const checks = firstRun(job, [{ laterals: [0, 1, 2] }, { laterals: [3] }], {
    pressure_m: Float64Array.from(pressures),
    flow_lps: flowOf(pressures),
  });
  expect(checks.map(({ set, lateral }) => [set, lateral])).toEqual([
    [0, 1],
    [0, 2],
    [1, 3],
  ]);
});

test("cups stand at the first, the middle and the last vine for three minutes", () => {
  const job = createWateringJob({ rows: 2, vines: 5 });
  const flow_lps = Float64Array.of(9, 9, 9, 9, 9, 5, 4, 3, 2, 1).map((each) => each / 1000);
  const checks = firstRun(job, [{ laterals: [1] }], { pressure_m: new Float64Array(10).fill(10), flow_lps });
  expect(checks).toHaveLength(1);
  expect(checks[0]?.cups.map(({ emitter }) => emitter)).toEqual([5, 7, 9]);
  expect(checks[0]?.cups.map(({ volume_l }) => Number(volume_l.toFixed(9)))).toEqual([0.9, 0.54, 0.18]);
});

test("the pressure at the far end is that of the end of the hose, as high as it lies", () => {
  const job = createWateringJob({ rows: 1, vines: 2, vineSpacing_m: 2, rise_ratio: 0.1, drip: { overrun_m: 5 } });
  const states = { pressure_m: Float64Array.of(10, 9.8), flow_lps: Float64Array.of(0.001, 0.001) };
  // The hose goes on for 5 m past the last emitter and rises by half a metre.
  expect(firstRun(job, [{ laterals: [0] }], states)[0]?.tail_kpa).toBeCloseTo((9.8 - 0.5) * 9.80665, 9);
});

test("a row of one vine takes one cup, and a set without emitters none", () => {
  const one = createWateringJob({ rows: 1, vines: 1 });
  const states = { pressure_m: Float64Array.of(10), flow_lps: Float64Array.of(0.001) };
  expect(firstRun(one, [{ laterals: [0] }], states)[0]?.cups).toHaveLength(1);
  const bare = createWateringJob({ rows: 1, drip: { emittersPerVine: 0 } });
  const nothing = { pressure_m: new Float64Array(), flow_lps: new Float64Array() };
  expect(firstRun(bare, [{ laterals: [0] }], nothing)).toEqual([]);
});
