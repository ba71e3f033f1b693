import fc from "fast-check";
import { expect, test } from "vitest";
import { lateralNeeds } from "../../../src/core/drip/lateral-needs.ts";
import { lateralOf } from "../../../src/core/drip/lateral-of.ts";
import { lateralAt } from "../../../src/core/hydraulics/lateral-steps.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const kpa_pm = 9.80665;

function needOf(sketch: WateringSketch) {
  const job = createWateringJob({ rows: 1, ...sketch });
  const [need] = lateralNeeds(job);
  if (need === undefined) throw new Error("there is no lateral");
  return { job, need, state: lateralAt(lateralOf(job, 0), need.inlet_m) };
}

test("plain emitters give their nominal flow in the mean", () => {
  const { need, state } = needOf({ vines: 80, drip: { emitterFlow_lph: 2 } });
  expect(need.flow_lps * 3600).toBeCloseTo(160, 5);
  expect(need.evenness.mean_lps * 3600).toBeCloseTo(2, 7);
  expect(need.inlet_m).toBeGreaterThan(10);
  expect(state.flow_lps).toBeCloseTo(need.flow_lps, 9);
  expect(need.lowest_lps * 3600).toBeLessThan(2);
  expect(need.highest_lps * 3600).toBeGreaterThan(2);
});

test("compensating emitters have the least of their range at the lowest", () => {
  const { need, state, job } = needOf({
    vines: 80,
    rise_ratio: 0.02,
    drip: { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 7 * kpa_pm },
  });
  const pressures = Array.from(state.head_m, (head_m, i) => head_m - Number(job.laterals.height_m[i]));
  expect(Math.min(...pressures)).toBeCloseTo(7, 6);
  expect(pressures.at(-1)).toBeCloseTo(7, 6);
  expect(need.evenness.variation_ratio).toBeCloseTo(0, 9);
});

test("downhill the lowest pressure is not at the end, and is met all the same", () => {
  const { state, job } = needOf({
    vines: 60,
    rise_ratio: -0.1,
    drip: { emitterKind: "compensating", emitterExponent: 0.05, emitterLeast_kpa: 7 * kpa_pm },
  });
  const pressures = Array.from(state.head_m, (head_m, i) => head_m - Number(job.laterals.height_m[i]));
  expect(Math.min(...pressures)).toBeCloseTo(7, 6);
  expect(pressures.at(-1)).toBeGreaterThan(15);
});

test("a lateral without emitters needs what brings water to its end, and no flow", () => {
  const { need } = needOf({ vines: 10, rise_ratio: 0.1, drip: { emittersPerVine: 0 } });
  expect(need).toMatchObject({ flow_lps: 0, longest: null });
  expect(need.inlet_m).toBeCloseTo(2, 9);
});

test("flushing takes 0.3 m/s through the end of the hose beside what the emitters give", () => {
  const { need } = needOf({ vines: 10, drip: { hoseInside_mm: 15.24 } });
  expect((need.flush_lps - need.flow_lps) * 3600).toBeCloseTo(197.0079, 3);
});

test("the longest lateral is even enough, and one emitter more is not", () => {
  const { need, job } = needOf({
    vines: 20,
    vineSpacing_m: 1,
    drip: { evenness_ratio: 0.92, emitterVariation_ratio: 0.02 },
  });
  const longest = need.longest;
  if (longest === null) throw new Error("no longest lateral");
  expect(longest.length_m).toBeCloseTo(longest.emitters, 9);
  const evenness = (vines: number) => {
    const other = createWateringJob({ rows: 1, vines, vineSpacing_m: 1, riser_m: 0, drip: job.blocks[0]?.drip ?? {} });
    const state = lateralAt(lateralOf(other, 0), 10);
    const mean = state.flow_lps / vines;
    return (1 - 1.27 * 0.02) * (Math.min(...state.outflow_lps) / mean);
  };
  expect(evenness(longest.emitters)).toBeGreaterThanOrEqual(0.92);
  expect(evenness(longest.emitters + 1)).toBeLessThan(0.92);
});

test("a longer or steeper row never needs less, whatever the emitter", () => {
  const sketches = fc.record({
    vines: fc.integer({ min: 1, max: 120 }),
    rise_ratio: fc.double({ min: 0, max: 0.2, noNaN: true }),
    isPlain: fc.boolean(),
    exponent: fc.double({ min: 0, max: 0.8, noNaN: true }),
  });
  fc.assert(
    fc.property(sketches, fc.integer({ min: 0, max: 40 }), fc.double({ min: 0, max: 0.1 }), (one, more, steeper) => {
      const drip = one.isPlain
        ? { emitterKind: "plain" as const, emitterExponent: Math.max(0.3, one.exponent) }
        : { emitterKind: "compensating" as const, emitterExponent: one.exponent / 8 };
      const { need } = needOf({ vines: one.vines, rise_ratio: one.rise_ratio, drip });
      const longer = needOf({ vines: one.vines + more, rise_ratio: one.rise_ratio, drip }).need;
      expect(longer.inlet_m).toBeGreaterThanOrEqual(need.inlet_m - 1e-6);
      const up = needOf({ vines: one.vines, rise_ratio: one.rise_ratio + steeper, drip }).need;
      expect(up.inlet_m).toBeGreaterThanOrEqual(need.inlet_m - 1e-6);
    }),
    { seed: 42, numRuns: 100 },
  );
});
