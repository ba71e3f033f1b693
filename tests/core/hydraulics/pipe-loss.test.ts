import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boreOf, type Inside } from "../../../src/core/hydraulics/bore.ts";
import { flowNear } from "../../../src/core/hydraulics/flow-near.ts";
import { type LawName, lawCodes } from "../../../src/core/hydraulics/friction-law.ts";
import { emitterFlow_lps, jetFlow, jetOf } from "../../../src/core/hydraulics/outlet-flow.ts";
import { headLoss_m, pipeLoss } from "../../../src/core/hydraulics/pipe-loss.ts";
import { waterViscosity_m2ps } from "../../../src/core/hydraulics/viscosity.ts";
import { createEmitter, createNetwork } from "../../support/create-network.ts";
import { lossOfPipe_m } from "../../support/loss-of-pipe.ts";

const seed = 20_240_611;
const laws: readonly LawName[] = ["darcy-weisbach", "hazen-williams", "epanet"];
const roughnessOf = (law: LawName) => (law === "hazen-williams" ? 145 : 0.0015);
const pipe = (law: LawName, inside_mm = 15.24): Inside => ({
  law: lawCodes[law],
  inside_mm,
  roughness: roughnessOf(law),
  viscosity_m2ps: 1.004e-6,
});

describe.each(laws)("the loss in a pipe by %s", (law) => {
  it("is what textbooks' formulas give", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 110, noNaN: true }),
        fc.double({ min: -4, max: 1.3, noNaN: true }),
        (inside_mm, power) => {
          const flow_lps = 10 ** power;
          const network = createNetwork([{ upstream: 0, length_m: 37, inside_mm }], {
            law,
            roughness: roughnessOf(law),
            outlets: [],
          });
          const expected_m = lossOfPipe_m(network, 1, flow_lps);
          expect(headLoss_m(pipe(law, inside_mm), 37, flow_lps) / expected_m).toBeCloseTo(1, 6);
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  it("grows as its slope says, and with every bit of flow", () => {
    const bore = boreOf(pipe(law));
    const at = (flow_lps: number) => {
      const out = new Float64Array(2);
      pipeLoss(bore, 10, flow_lps, out);
      return { loss: out[0] ?? 0, slope: out[1] ?? 0 };
    };
    for (let k = 1; k < 400; k++) {
      const flow_lps = (k * bore.laminar_lps) / 97.3;
      const step = 1e-7 * flow_lps;
      const [below, here, above] = [at(flow_lps - step), at(flow_lps), at(flow_lps + step)];
      expect((above.loss - below.loss) / (2 * step) / here.slope).toBeCloseTo(1, 4);
      expect(above.loss).toBeGreaterThan(below.loss);
    }
  });

  it("is none without flow or length, the same back and forth, and less in a wider pipe", () => {
    expect(headLoss_m(pipe(law), 10, 0)).toBe(0);
    expect(headLoss_m(pipe(law), 0, 1)).toBe(0);
    expect(headLoss_m(pipe(law), 10, -0.05)).toBe(-headLoss_m(pipe(law), 10, 0.05));
    expect(headLoss_m(pipe(law, 20), 10, 0.05)).toBeLessThan(headLoss_m(pipe(law, 15), 10, 0.05));
  });
});

describe("an outlet's slope", () => {
  it("is how fast its flow grows with the head, by head and by flow alike", () => {
    for (const emitter of [
      createEmitter(2),
      createEmitter(4, 0.7),
      createEmitter(2, 0.05, 7),
      createEmitter(3, 0, 5),
    ]) {
      const jet = jetOf(emitter);
      for (const pressure_m of [0.00004, 0.003, 0.4, 3, 6, 12, 30]) {
        const byHead = new Float64Array(2);
        const byFlow = new Float64Array(2);
        jetFlow(jet, pressure_m, 0, byHead);
        flowNear(jet, byHead[0] ?? 0, pressure_m, 0, byFlow);
        const step_m = 1e-6 * pressure_m;
        const rise = emitterFlow_lps(emitter, pressure_m + step_m) - emitterFlow_lps(emitter, pressure_m - step_m);
        expect(byHead[1]).toBeCloseTo(rise / (2 * step_m), 6);
        expect((byFlow[0] ?? 0) / (byHead[0] ?? 1)).toBeCloseTo(1, 9);
        expect(byFlow[1]).toBeCloseTo(byHead[1] ?? 0, 9);
      }
    }
  });
});

describe("viscosity", () => {
  it("is the table's at its temperatures, falls between them and holds still outside of them", () => {
    expect(waterViscosity_m2ps(20)).toBeCloseTo(1.004e-6, 12);
    expect(waterViscosity_m2ps(10)).toBeCloseTo(1.306e-6, 12);
    expect(waterViscosity_m2ps(12)).toBeLessThan(waterViscosity_m2ps(11));
    expect(waterViscosity_m2ps(-5)).toBe(1.787e-6);
    expect(waterViscosity_m2ps(60)).toBe(0.658e-6);
  });
});
