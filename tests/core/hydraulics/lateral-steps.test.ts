import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { condenseLateral } from "../../../src/core/hydraulics/condense-lateral.ts";
import { lateralFlow_lps } from "../../../src/core/hydraulics/lateral-curve.ts";
import { lateralAt, lateralFrom } from "../../../src/core/hydraulics/lateral-steps.ts";
import { solveNetwork } from "../../../src/core/hydraulics/solve-network.ts";
import { createLateral, type LateralWish } from "../../support/create-lateral.ts";
import { createEmitter, createNetwork, createSupply, type PipeWish } from "../../support/create-network.ts";

const seed = 20_240_611;

const wishes = fc.record({
  emitters: fc.integer({ min: 1, max: 150 }),
  spacing_m: fc.double({ min: 0.3, max: 3, noNaN: true }),
  slope: fc.integer({ min: -100, max: 100 }).map((perMille) => perMille / 1000),
  hoseInside_mm: fc.constantFrom(13.2, 15.24, 20.8),
  law: fc.constantFrom("darcy-weisbach", "hazen-williams", "epanet"),
  roughness: fc.constant(140),
  barb_m: fc.constantFrom(0, 0.1),
  riser_m: fc.constantFrom(0, 1.5),
  emitter: fc.constantFrom(createEmitter(2), createEmitter(4, 0.6), createEmitter(2, 0, 7), createEmitter(2, 0.05, 5)),
});
const heads = fc.integer({ min: -500, max: 4000 }).map((centimetres) => centimetres / 100);

describe("a lateral from its inlet", () => {
  it("is the one from its end that has this inlet", () => {
    fc.assert(
      fc.property(wishes, heads, (wish, inlet_m) => {
        const lateral = createLateral({ ...wish, roughness: wish.law === "epanet" ? 0.0015 : 140 });
        const state = lateralAt(lateral, inlet_m);
        const back = lateralFrom(lateral, state.head_m[state.head_m.length - 1] ?? 0);
        expect(Math.abs(back.inlet_m - inlet_m)).toBeLessThanOrEqual(1e-6);
        expect(back.flow_lps).toBe(state.flow_lps);
      }),
      { seed, numRuns: 300 },
    );
  });

  it("gives what its emitters give, and no emitter above the water's reach anything", () => {
    fc.assert(
      fc.property(wishes, heads, (wish, inlet_m) => {
        const lateral = createLateral(wish);
        const { outflow_lps, flow_lps, head_m } = lateralAt(lateral, inlet_m);
        expect(outflow_lps.reduce((sum, flow) => sum + flow, 0)).toBeCloseTo(flow_lps, 12);
        for (const [i, flow] of outflow_lps.entries()) {
          expect(flow > 0).toBe((head_m[i] ?? 0) > (lateral.height_m[i] ?? 0));
        }
      }),
      { seed, numRuns: 200 },
    );
  });

  it("gives more for more head, and no more on the way uphill than on the level", () => {
    fc.assert(
      fc.property(wishes, heads, fc.double({ min: 0, max: 5, noNaN: true }), (wish, inlet_m, more_m) => {
        const flow = (change: LateralWish, head_m: number) => lateralAt(createLateral({ ...wish, ...change }), head_m);
        expect(flow({}, inlet_m + more_m).flow_lps).toBeGreaterThanOrEqual(flow({}, inlet_m).flow_lps - 1e-12);
        const level = flow({ slope: 0 }, inlet_m).flow_lps;
        expect(flow({ slope: Math.abs(wish.slope) }, inlet_m).flow_lps).toBeLessThanOrEqual(level + 1e-12);
      }),
      { seed, numRuns: 150 },
    );
  });

  it("is what the network solver finds for the same pipes", () => {
    fc.assert(
      fc.property(wishes, fc.double({ min: 4, max: 40, noNaN: true }), (wish, inlet_m) => {
        const lateral = createLateral({ ...wish, riser_m: 0, roughness: wish.law === "epanet" ? 0.0015 : 140 });
        const pipes = [...lateral.at_m].map(
          (along_m, i): PipeWish => ({
            upstream: i,
            length_m: along_m - (lateral.at_m[i - 1] ?? 0) + lateral.barb_m,
            inside_mm: lateral.hoseInside_mm,
            height_m: lateral.height_m[i] ?? 0,
            outlet: 0,
          }),
        );
        const { law, emitter } = wish;
        const network = createNetwork(pipes, { law, roughness: lateral.roughness, outlets: [emitter] });
        const solved = solveNetwork(network, createSupply(inlet_m));
        const state = lateralAt(lateral, inlet_m);
        expect(solved.isSettled).toBe(true);
        for (const [i, head_m] of state.head_m.entries()) {
          // A head is known no nearer than to the leap from laminar flow.
          expect(Math.abs((solved.head_m[i + 1] ?? 0) - head_m)).toBeLessThanOrEqual(5e-4);
        }
      }),
      { seed, numRuns: 200 },
    );
  });

  it("needs more inlet head for the same end with every emitter more", () => {
    let before_m = 0;
    for (let emitters = 1; emitters <= 200; emitters += 7) {
      const { inlet_m } = lateralFrom(createLateral({ emitters }), 10);
      expect(inlet_m).toBeGreaterThan(before_m);
      before_m = inlet_m;
    }
  });

  it("without emitters takes nothing", () => {
    const { flow_lps, inlet_m } = lateralAt(createLateral({ emitters: 0, riser_m: 2 }), 10);
    expect([flow_lps, inlet_m]).toEqual([0, 10]);
  });

  it("has its riser's loss between tee and hose", () => {
    const plain = lateralFrom(createLateral(), 10);
    const raised = lateralFrom(createLateral({ riser_m: 2 }), 10);
    expect(raised.inlet_m).toBeGreaterThan(plain.inlet_m);
    expect(raised.flow_lps).toBe(plain.flow_lps);
  });
});

describe("a condensed lateral", () => {
  it("gives the lateral's flow within some hundred-thousandths over a wide range of heads", () => {
    const lateral = createLateral({ law: "hazen-williams" });
    for (const [degree, lowest_m, highest_m, off] of [
      [3, 11, 17, 2e-5],
      [4, 8, 22, 1e-4],
      [6, 8, 22, 5e-6],
    ] as const) {
      const curve = condenseLateral(lateral, lowest_m, highest_m, degree);
      for (let k = 0; k <= 50; k++) {
        const inlet_m = lowest_m + (k / 50) * (highest_m - lowest_m);
        expect(Math.abs(lateralFlow_lps(curve, inlet_m) / lateralAt(lateral, inlet_m).flow_lps - 1)).toBeLessThan(off);
      }
    }
  });

  it("goes straight on beyond its range, and never below no flow", () => {
    const curve = condenseLateral(createLateral(), 10, 12);
    const rise = lateralFlow_lps(curve, 14) - lateralFlow_lps(curve, 13);
    expect(lateralFlow_lps(curve, 15) - lateralFlow_lps(curve, 14)).toBeCloseTo(rise, 12);
    expect(rise).toBeGreaterThan(0);
    expect(lateralFlow_lps(curve, -50)).toBe(0);
  });

  it("over one head alone is the flow there", () => {
    const curve = condenseLateral(createLateral(), 10, 10);
    expect(lateralFlow_lps(curve, 10)).toBeCloseTo(lateralAt(createLateral(), 10).flow_lps, 12);
  });
});
