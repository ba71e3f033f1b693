import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flowClasses, flowClassOf, flowPieces } from "../../../src/core/drip/flow-pieces.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

describe("the class of a flow", () => {
  test.each([
    [0, "none"],
    [0.89, "far-under"],
    [0.9, "under"],
    [0.94, "under"],
    [0.95, "even"],
    [1, "even"],
    [1.05, "even"],
    [1.1, "over"],
    [1.11, "far-over"],
  ])("%f of the nominal flow is %s", (share, flowClass) => {
    expect(flowClassOf(share * 2, 2)).toBe(flowClass);
  });
});

/** One row of five vines whose emitters give these shares of their nominal flow. */
function piecesOf(...shares: readonly number[]) {
  const job = createWateringJob({ rows: 1, vines: shares.length });
  const nominal_lps = job.blocks[0]?.emitter.nominal_lps ?? Number.NaN;
  const flow_lps = Float64Array.from(shares, (share) => share * nominal_lps);
  const hose_m = Number(job.laterals.hose_m[0]);
  return { job, hose_m, pieces: flowPieces(job, { emitters: { flow_lps, pressure_m: flow_lps } }, () => hose_m) };
}

describe("a lateral in pieces", () => {
  test("is one where all its emitters are alike", () => {
    const { pieces } = piecesOf(1, 1.02, 0.97);
    expect(pieces.map(({ flowClass, from, to }) => [flowClass, from, to])).toEqual([["even", 0, 1]]);
  });

  test("is cut half-way between two emitters that are not", () => {
    const { job, hose_m, pieces } = piecesOf(1, 0.92, 0.5, 0);
    expect(pieces.map(({ flowClass }) => flowClass)).toEqual(["even", "under", "far-under", "none"]);
    const [one = 0, two = 0] = job.laterals.at_m;
    expect(pieces[0]?.to).toBeCloseTo((one + two) / 2 / hose_m, 12);
    expect(pieces[1]?.from).toBe(pieces[0]?.to);
  });

  test("there is none while no flow is known", () => {
    expect(flowPieces(createWateringJob(), { emitters: null }, () => 100)).toEqual([]);
  });

  test("the pieces of any lateral follow each other from the water end to its tail, neighbours of different classes", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1.5, noNaN: true }), { minLength: 1, maxLength: 30 }), (shares) => {
        const { pieces } = piecesOf(...shares);
        expect(pieces[0]?.from).toBe(0);
        expect(pieces.at(-1)?.to).toBeCloseTo(1, 12);
        pieces.forEach(({ from, flowClass }, i) => {
          const before = pieces[i - 1];
          expect(flowClasses).toContain(flowClass);
          if (before) expect([before.to, before.flowClass === flowClass]).toEqual([from, false]);
        });
      }),
      { seed: 20_261_126 },
    );
  });
});
