import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meetSupply, supplyFlow_lps, supplyHead_m } from "../../../src/core/hydraulics/read-supply.ts";
import { createSupply, createSupplyCurve } from "../../support/create-network.ts";

const seed = 20_240_611;
const pump = createSupplyCurve([
  [0, 40],
  [1, 38],
  [2, 30],
  [4, 6],
]);

describe("a supply curve", () => {
  it("is straight between its points, and past the last as between the last two", () => {
    expect(supplyHead_m(pump, 0)).toBe(40);
    expect(supplyHead_m(pump, 0.5)).toBe(39);
    expect(supplyHead_m(pump, 1.5)).toBe(34);
    expect(supplyHead_m(pump, 5)).toBe(-6);
  });

  it("of one point has one head at any flow", () => {
    expect(supplyHead_m(createSupply(12), 99)).toBe(12);
    expect(supplyFlow_lps(createSupply(12), 12)).toBe(Number.POSITIVE_INFINITY);
    expect(supplyFlow_lps(createSupply(12), 12.1)).toBe(0);
  });

  it("tells the flow at which a head is left", () => {
    expect(supplyFlow_lps(pump, 41)).toBe(0);
    expect(supplyFlow_lps(pump, 39)).toBe(0.5);
    expect(supplyFlow_lps(pump, 30)).toBe(2);
    expect(supplyFlow_lps(pump, -6)).toBe(5);
  });

  it("level for a while gives its head to the end of that", () => {
    const flat = createSupplyCurve([
      [0, 20],
      [3, 20],
      [4, 10],
    ]);
    expect(supplyFlow_lps(flat, 20)).toBe(3);
    expect(supplyFlow_lps(flat, 15)).toBe(3.5);
  });

  it("meets any demand that grows with the head where both agree", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (base, growth) => {
          const out = new Float64Array(2);
          meetSupply(pump, base, growth, out);
          const [head_m = Number.NaN, flow_lps = Number.NaN] = out;
          expect(head_m).toBeCloseTo(supplyHead_m(pump, flow_lps), 9);
          expect(flow_lps).toBeCloseTo(base + growth * head_m, 9);
        },
      ),
      { seed, numRuns: 300 },
    );
  });
});
