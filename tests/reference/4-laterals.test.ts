import { describe, expect, it } from "vitest";
import { exactOutletFactor } from "../../src/core/hydraulics/christiansen.ts";
import { blasiusFactor, churchillFactor } from "../../src/core/hydraulics/friction-factor.ts";
import { lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { LateralState } from "../../src/core/hydraulics/lateral.ts";
import { lateralAt, lateralFrom } from "../../src/core/hydraulics/lateral-steps.ts";
import { emitterFlow_lps } from "../../src/core/hydraulics/outlet-flow.ts";
import { headLoss_m, reynolds, velocity_mps } from "../../src/core/hydraulics/pipe-loss.ts";
import { solveNetwork } from "../../src/core/hydraulics/solve-network.ts";
import { createLateral } from "../support/create-lateral.ts";
import { blockPipes, createEmitter, createNetwork, createSupply } from "../support/create-network.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 4.5 and 4.7: laterals by steps, and a block of them. */

const steps: Source = { computed: "back-step of the handbook, 4.5" };
const network: Source = { computed: "an open network solver, epanet-js 0.9.0" };
const hand: Source = { computed: "by hand" };

/** Inlet, flow, and least, most and mean outflow, L/h, within a millionth. */
function checked(state: LateralState, inlet_m: number, flow_lph: number, extremes: readonly [number, number, number]) {
  const [low, high, mean] = extremes;
  const outflow_lph = state.outflow_lps.map((flow) => flow * 3600);
  expect(Math.abs(state.inlet_m - inlet_m)).toBeLessThanOrEqual(1e-6);
  expect(Math.abs(state.flow_lps * 3600 - flow_lph)).toBeLessThanOrEqual(1e-6 * flow_lph);
  expect(Math.abs(Math.min(...outflow_lph) - low)).toBeLessThanOrEqual(1e-6 * low);
  expect(Math.abs(Math.max(...outflow_lph) - high)).toBeLessThanOrEqual(1e-6 * high);
  expect(Math.abs((state.flow_lps * 3600) / outflow_lph.length - mean)).toBeLessThanOrEqual(1e-6 * mean);
}

/** Least pressure head of a lateral with so much rise a metre. */
const leastPressure_m = (state: LateralState, slope = 0) =>
  Math.min(...state.head_m.map((head_m, i) => head_m - slope * 0.9144 * (i + 1)));

/** Case A stepped back with a friction factor of the test's own: the other printed forms. */
function steppedWith(factor: (re: number) => number, end_m: number) {
  let head_m = end_m;
  let flow_lps = 0;
  for (let i = 0; i < 100; i++) {
    flow_lps += emitterFlow_lps(createEmitter(2), head_m);
    const velocity = velocity_mps(15.24, flow_lps);
    const re = reynolds(15.24, 1.004e-6, flow_lps);
    head_m += (((factor(re) * 0.9144) / 0.01524) * velocity ** 2) / (2 * 9.80665);
  }
  return { inlet_m: head_m, flow_lph: flow_lps * 3600 };
}

describe("4.5 lateral by steps", () => {
  it(titled("4-13 case A from an end head of 10 m", steps), () => {
    const state = lateralFrom(createLateral(), 10);
    checked(state, 10.400281, 201.04322, [2, 2.0385577, 2.0104322]);
  });

  it(titled("4-14, 4-15 Churchill, and Blasius everywhere, beside ours", steps), () => {
    const churchill = steppedWith((re) => churchillFactor(re, 0), 10);
    const blasius = steppedWith(blasiusFactor, 10);
    const ours = lateralFrom(createLateral(), 10);
    expect(churchill.inlet_m).toBeCloseTo(10.391841, 6);
    expect(churchill.flow_lph).toBeCloseTo(200.98526, 5);
    expect(blasius.inlet_m).toBeCloseTo(10.40326, 6);
    expect(blasius.flow_lph).toBeCloseTo(201.05253, 5);
    // Gaps: 2 % more loss than by Churchill, 1 % less than by Blasius everywhere.
    expect((ours.inlet_m - 10) / (churchill.inlet_m - 10)).toBeCloseTo(1.0215, 4);
    expect((ours.inlet_m - 10) / (blasius.inlet_m - 10)).toBeCloseTo(0.9926, 4);
  });

  it(titled("4-16 Hazen-Williams, C 140", steps), () => {
    checked(lateralFrom(createLateral({ law: "hazen-williams" }), 10), 10.344564, 200.876, [2, 2.033208, 2.00876]);
  });

  it(titled("4-17 to 4-22, 4-24 to 4-26 from an inlet head", steps), () => {
    for (const [wish, inlet_m, flow_lph, least_m, extremes] of [
      [{}, 10, 197.12461, 9.6135511, [1.9609744, 1.9989382, 1.9712461]],
      [{ law: "hazen-williams" }, 10, 197.49606, 9.6660994, [1.9663265, 1.9990572, 1.9749606]],
      [{ slope: 0.02 }, 10, 187.71263, 7.824766, [1.7691542, 1.9971948, 1.8771263]],
      [{ slope: -0.02 }, 10, 205.97285, 10.006825, [2.0006824, 2.1356696, 2.0597285]],
      [{ slope: -0.05 }, 10, 218.40094, 10.033019, [2.0032992, 2.3738145, 2.1840094]],
      [{ barb_m: 0.116 }, 10, 196.76805, 9.5660694, [1.9561257, 1.9988072, 1.9676805]],
      [{ emitters: 219 }, 10, 391.14932, 7.2872871, [1.7073122, 1.9964753, 1.78607]],
      [{ emitters: 219, hoseInside_mm: 17.6 }, 10, 412.42194, 8.4703068, [1.8406854, 1.9980493, 1.8832052]],
      [{ emitter: createEmitter(2, 0.05) }, 20, 206.89004, 19.576621, [2.068316, 2.07047, 2.0689004]],
    ] as const) {
      const state = lateralAt(createLateral(wish), inlet_m);
      checked(state, inlet_m, flow_lph, extremes);
      const slope = "slope" in wish ? wish.slope : 0;
      expect(Math.abs(leastPressure_m(state, slope) - least_m)).toBeLessThanOrEqual(1.1e-6);
    }
  });

  it(titled("4-18 beside an open network solver, C 140 and C 150", network), () => {
    const c140 = lateralAt(createLateral({ law: "hazen-williams" }), 10);
    const c150 = lateralAt(createLateral({ law: "hazen-williams", roughness: 150 }), 10);
    expect(Math.abs(c140.flow_lps * 3600 - 197.496071)).toBeLessThanOrEqual(2e-5);
    expect(Math.abs(leastPressure_m(c140) - 9.666101)).toBeLessThanOrEqual(2e-5);
    expect(Math.abs(c150.flow_lps * 3600 - 197.791296)).toBeLessThanOrEqual(2e-5);
    expect(Math.abs(leastPressure_m(c150) - 9.705197)).toBeLessThanOrEqual(2e-5);
  });

  it(titled("4-23 the inlet head at which the mean is 2 L/h", steps), () => {
    const state = lateralAt(createLateral(), 10.293048);
    checked(state, 10.293048, 200, [1.9895983, 2.0280197, 2]);
    expect(Math.abs(leastPressure_m(state) - 9.8962531)).toBeLessThanOrEqual(1e-6);
  });

  it(titled("4-27 three emitters of 40 L/h, 10 m apart, by hand", hand), () => {
    const lateral = createLateral({ emitters: 3, spacing_m: 10, hoseInside_mm: 13.2, emitter: createEmitter(40) });
    const state = lateralFrom(lateral, 10);
    expect(state.head_m[2]).toBe(10);
    expect(state.head_m[1]).toBeCloseTo(10.015266, 6);
    expect(state.head_m[0]).toBeCloseTo(10.062707, 6);
    expect(state.inlet_m).toBeCloseTo(10.159314, 6);
    expect((state.outflow_lps[2] ?? 0) * 3600).toBeCloseTo(40, 6);
    expect((state.outflow_lps[1] ?? 0) * 3600).toBeCloseTo(40.030521, 6);
    expect((state.outflow_lps[0] ?? 0) * 3600).toBeCloseTo(40.125219, 6);
    let flow_lps = 0;
    for (const [i, re] of [1067.48, 2135.78, 3206.6].entries()) {
      flow_lps += state.outflow_lps[2 - i] ?? 0;
      expect(Math.abs(reynolds(13.2, 1.004e-6, flow_lps) - re)).toBeLessThanOrEqual(0.01);
    }
  });

  it(titled("Christiansen's F on case A, beside the steps", steps), () => {
    const hose = { law: lawCodes["darcy-weisbach"], inside_mm: 15.24, roughness: 0, viscosity_m2ps: 1.004e-6 };
    const full_m = headLoss_m(hose, 91.44, 200 / 3600);
    expect(full_m).toBeCloseTo(1.0887864, 6);
    expect(full_m * 0.3686508).toBeCloseTo(0.401382, 6);
    expect(full_m * exactOutletFactor(100, 1.75)).toBeCloseTo(0.401382, 5);
    expect(lateralFrom(createLateral(), 10).inlet_m - 10).toBeCloseTo(0.400281, 6);
  });
});

describe("4.7 a block of 20 laterals", () => {
  /**
   * In the first lateral a flow stands right at Re 2000, where the loss leaps from laminar to Blasius: the handbook's halving ends on one side of the leap,
   * ours in it, which is 0.005 L/h of the block.
   */
  const leap_lph = 0.006;
  const manifold = { law: lawCodes["hazen-williams"], inside_mm: 36.6776, roughness: 150, viscosity_m2ps: 1.004e-6 };

  it(titled("4-35 stepped along its manifold from the last lateral", steps), () => {
    let head_m = 10;
    let flow_lps = 0;
    const laterals: LateralState[] = [];
    for (let i = 0; i < 20; i++) {
      const lateral = lateralAt(createLateral(), head_m);
      laterals.push(lateral);
      flow_lps += lateral.flow_lps;
      head_m += headLoss_m(manifold, 2.4384, flow_lps);
    }
    const emitters = laterals.flatMap(({ outflow_lps }) => [...outflow_lps]);
    const mean = flow_lps / emitters.length;
    expect(head_m).toBeCloseTo(10.594594, 5);
    expect(Math.abs(flow_lps * 3600 - 3970.5503)).toBeLessThanOrEqual(leap_lph);
    expect(velocity_mps(36.6776, flow_lps)).toBeCloseTo(1.0438942, 5);
    expect(Math.abs((laterals[19]?.flow_lps ?? 0) * 3600 - 202.14617)).toBeLessThanOrEqual(leap_lph);
    expect((laterals[0]?.flow_lps ?? 0) * 3600).toBeCloseTo(197.12461, 4);
    expect(mean * 3600).toBeCloseTo(1.9852752, 5);
    expect(100 * (1 - (1.27 * 0.05) / Math.SQRT2) * (Math.min(...emitters) / mean)).toBeCloseTo(94.340781, 3);
    // With twenty times the flow of the last lateral.
    const byFactor_m = headLoss_m(manifold, 48.768, (20 * 197.12461) / 3600) * exactOutletFactor(20, 1.852);
    expect(byFactor_m).toBeCloseTo(0.59041965, 5);
  });

  it(titled("4-35 the solver finds the same block from its inlet", steps), () => {
    const pipes = blockPipes({
      laterals: 20,
      emitters: 100,
      main_m: 0,
      submainInside_mm: [36.6776, 36.6776, 36.6776],
      rowSpacing_m: 2.4384,
      emitterSpacing_m: 0.9144,
      hoseInside_mm: 15.24,
    });
    const block = createNetwork(pipes, { law: "darcy-weisbach", outlets: [createEmitter(2)] });
    const law = block.law.map((code, i) => (block.inside_mm[i] === 15.24 ? code : lawCodes["hazen-williams"]));
    const roughness = block.roughness.map(() => 150);
    const solved = solveNetwork({ ...block, law, roughness }, createSupply(10.594594));
    expect(solved.isSettled).toBe(true);
    expect(Math.abs((solved.flow_lps[0] ?? 0) * 3600 - 3970.5503)).toBeLessThanOrEqual(leap_lph);
    // Node 1 ends the main line; then a tee and its hundred emitters each: the last tee stands a hundred nodes before the end.
    expect(Math.abs((solved.head_m[solved.head_m.length - 101] ?? 0) - 10)).toBeLessThanOrEqual(1e-5);
  });
});
