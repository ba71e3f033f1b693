import { describe, expect, it } from "vitest";
import { emissionUniformity, headVariation, statisticalUniformity } from "../../src/core/drip/evenness.ts";
import { flushFlow_lps } from "../../src/core/drip/flushing.ts";
import type { EvenHose } from "../../src/core/drip/guess-longest.ts";
import { headBudget } from "../../src/core/drip/head-budget.ts";
import { evenLateral, longestLateral } from "../../src/core/drip/longest-lateral.ts";
import { recommendedEvenness } from "../../src/core/drip/recommended-evenness.ts";
import { christiansenFactor } from "../../src/core/hydraulics/christiansen.ts";
import type { LateralState } from "../../src/core/hydraulics/lateral.ts";
import { lateralAt, lateralFrom } from "../../src/core/hydraulics/lateral-steps.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 4.5 and 4.6: evenness, head budget, longest lateral. */

const kellerKarmeli: Source = { fromMemory: "Keller and Karmeli 1974" };
const wuGitlin: Source = { fromMemory: "Wu and Gitlin" };
const kellerBliesner: Source = { fromMemory: "Keller and Bliesner 1990" };
const bralts: Source = { fromMemory: "Bralts, ASAE EP458" };
const handbook: Source = { computed: "calculation handbook 4.5, stepped by itself" };

/** Case A of the handbook: 100 emitters of 2 L/h at 10 m, x 0.5, every 0.9144 m in a bore of 15.24 mm, laminar and Blasius at 20 °C. */
function caseA(change: Partial<EvenHose> & { readonly flow_lph?: number } = {}): EvenHose {
  const { flow_lph = 2, ...hose } = change;
  return {
    emitter: { kind: "emitter", nominal_lps: flow_lph / 3600, nominalHead_m: 10, exponent: 0.5, from_m: null },
    hoseInside_mm: 15.24,
    law: 0,
    roughness: 0,
    barb_m: 0,
    riserInside_mm: 20,
    viscosity_m2ps: 1.004e-6,
    spacing_m: 0.9144,
    slope_ratio: 0,
    ...hose,
  };
}

const lowest = ({ outflow_lps }: LateralState) => Math.min(...outflow_lps);
const highest = ({ outflow_lps }: LateralState) => Math.max(...outflow_lps);
const variation = (state: LateralState) => (highest(state) - lowest(state)) / highest(state);
const lowestToMean = (state: LateralState) => (lowest(state) * state.outflow_lps.length) / state.flow_lps;

describe("4.6 evenness", () => {
  it(titled("4-28, 4-29 emission uniformity of two emitters a plant and of one", kellerKarmeli), () => {
    expect(100 * emissionUniformity(0.95, 0.05, 2)).toBeCloseTo(90.73438, 5);
    expect(100 * emissionUniformity(0.95, 0.05, 1)).toBeCloseTo(88.9675, 5);
  });

  it.each([
    ["4-17", 100, 0, 95.01219, 0.01899],
    ["4-19", 100, 0.02, 90.01615, 0.11418],
    ["4-20", 100, -0.02, 92.77189, 0.06321],
    ["4-24", 219, 0, 91.29831, 0.14484],
  ])(`4-30 case %s, ${titled("its evenness and its flow variation", handbook)}`, (_, count, slope_ratio, even, q) => {
    const state = lateralAt(evenLateral(caseA({ slope_ratio }), count), 10);
    expect(100 * emissionUniformity(lowestToMean(state), 0.05, 2)).toBeCloseTo(even, 4);
    expect(variation(state)).toBeCloseTo(q, 5);
  });

  it.each([
    [0.5, 0.19],
    [0.4, 0.2315665],
    [0.6, 0.1610472],
    [0.7, 0.1397352],
    [0.05, 0.8784233],
  ])(titled("4-31 head may vary, for 10 % of flow, at exponent %d", wuGitlin), (exponent, expected) => {
    expect(headVariation(0.1, exponent)).toBeCloseTo(expected, 7);
  });

  it(titled("4-32 the head budget for an emission uniformity of 90 %", kellerBliesner), () => {
    const budget = headBudget(10, 0.5, 0.9, 0.05, 2);
    expect(budget.lowest_ratio).toBeCloseTo(0.942311, 6);
    expect(budget.lowest_m).toBeCloseTo(8.8795, 6);
    expect(budget.spread_m).toBeCloseTo(2.801251, 6);
  });

  it(titled("4-33 statistical uniformity", bralts), () => {
    expect(100 * statisticalUniformity(0.5 * 0.1, 0.05)).toBeCloseTo(92.92893, 5);
    expect(100 * statisticalUniformity(0.5 * 0.08, 0.07)).toBeCloseTo(91.93774, 5);
  });

  it.each([
    [0, 10.301036, 10.293048],
    [0.02, 11.215436, 11.221358],
    [-0.02, 9.386637, 9.378569],
  ])(
    titled("4-34 inlet of case A for 2 L/h in the mean on a slope of %d", kellerBliesner),
    (slope, rule_m, steps_m) => {
      // h_a + 3/4 of the friction + half of the rise: friction of the whole flow, less for outlets on the way.
      const plain = { spacing_m: 0.9144, slope_ratio: 0 };
      const whole_m =
        lateralFrom(evenLateral({ ...caseA({ flow_lph: 200 }), ...plain, spacing_m: 91.44 }, 1), 10).inlet_m - 10;
      expect(whole_m).toBeCloseTo(1.0887864, 6);
      const friction_m = whole_m * christiansenFactor(100, 1.75);
      expect(10 + 0.75 * friction_m + (slope * 91.44) / 2).toBeCloseTo(rule_m, 5);
      // Stepped, on the head at the end that gives it.
      const lateral = evenLateral(caseA({ slope_ratio: slope }), 100);
      expect(lateralAt(lateral, steps_m).flow_lps * 3600).toBeCloseTo(200, 4);
    },
  );

  it(titled("what published practice recommends to design for", { fromMemory: "ASAE EP405.1" }), () => {
    expect(recommendedEvenness("on-line", 5, 0)).toEqual([0.9, 0.95]);
    expect(recommendedEvenness("on-line", 5, 0.03)).toEqual([0.85, 0.9]);
    expect(recommendedEvenness("on-line", 1.8, 0.02)).toEqual([0.85, 0.9]);
    expect(recommendedEvenness("on-line", 1.8, -0.05)).toEqual([0.8, 0.9]);
    expect(recommendedEvenness("in-line", 1.8, 0)).toEqual([0.8, 0.9]);
    expect(recommendedEvenness("in-line", 1.8, 0.05)).toEqual([0.7, 0.85]);
  });
});

describe("4.5 longest level lateral for 10 % of flow variation, 10 m at its inlet", () => {
  it.each([
    [15.24, 2, 187],
    [15.24, 1.6, 216],
    [15.24, 4, 121],
    [13.8, 2, 158],
    [17.6, 2, 240],
    [17.6, 4, 155],
  ])(titled("a bore of %d mm, %d L/h: %i emitters", handbook), (hoseInside_mm, flow_lph, expected) => {
    expect(longestLateral(caseA({ hoseInside_mm, flow_lph }), 10, (state) => variation(state) <= 0.1, 1000)).toBe(
      expected,
    );
  });

  it("is told as longer than any row where evenness lasts", () => {
    const hose = caseA({ hoseInside_mm: 100 });
    expect(longestLateral(hose, 10, (state) => variation(state) <= 0.1, 300)).toBeNull();
  });
});

describe("4.8 flushing", () => {
  it.each([
    [15.24, 197.0079],
    [13.8, 161.5369],
    [17.6, 262.7477],
  ])(titled("4-41 0.3 m/s at the end of a bore of %d mm", { fromMemory: "ASAE EP405" }), (inside_mm, flow_lph) => {
    expect(Math.abs(flushFlow_lps(inside_mm) * 3600 - flow_lph)).toBeLessThan(1e-3);
  });
});
