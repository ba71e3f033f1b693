import { describe, expect, it } from "vitest";
import { si } from "../../src/core/project/si.ts";
import {
  arc_m,
  catenary,
  dropUnderWeight_m,
  sag_m,
  supportTension_n,
  tensionFromPull_n,
} from "../../src/core/trellis/mechanics/sag.ts";
import { breakingLoad_n, gravity_mps2, wireMass_kgpm } from "../../src/core/trellis/mechanics/steel.ts";
import { inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.3 and 2.4: sag, the check without a gauge, working tension. */

const statics: Source = { computed: "parabola and catenary" };
const board: Source = { computedAsPublished: "an extension note: 40 in board, 1/2 in, tension is 20 times the pull" };
const supplier: Source = {
  computedAsPublished: "a fence-wire supplier's article: 250 lbf at most, 460 lbf low carbon",
};

const bay_m = 7.3152;
const tension_n = 890;

describe("2.3 sag", () => {
  it(titled("2-14 a bay of bare 2.5 mm wire", statics), () => {
    const own_npm = wireMass_kgpm({ diameter_mm: 2.5, coating: "bare" }) * gravity_mps2;
    expect(own_npm).toBeCloseTo(0.3778855, 6);
    expect(Math.abs(sag_m(own_npm, bay_m, tension_n) * 1000 - 2.840094)).toBeLessThanOrEqual(1e-6);
  });

  it(titled("2-15 a bay with 50 N/m, parabola and catenary", statics), () => {
    const parabola_m = sag_m(50, bay_m, tension_n);
    const exact = catenary(50, bay_m, tension_n);
    expect(Math.abs(parabola_m - 0.3757876)).toBeLessThanOrEqual(1e-7);
    expect(Math.abs(exact.sag_m - 0.3771117)).toBeLessThanOrEqual(1e-7);
    expect(exact.sag_m / parabola_m - 1).toBeCloseTo(0.00352, 5);
  });

  it(titled("2-16 a span of 100 m", statics), () => {
    expect(Math.abs(sag_m(0.5, 100, 1000) - 0.625)).toBeLessThanOrEqual(1e-7);
    expect(Math.abs(catenary(0.5, 100, 1000).sag_m - 0.62503255)).toBeLessThanOrEqual(1e-7);
    expect(catenary(0.5, 100, 1000).length_m).toBeCloseTo(100.010417, 6);
  });

  it(titled("2-17 length and end tension of the bay with 50 N/m", statics), () => {
    const parabola_m = sag_m(50, bay_m, tension_n);
    const exact = catenary(50, bay_m, tension_n);
    expect(Math.abs(exact.length_m - 7.366787)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(arc_m(bay_m, parabola_m) - 7.366679)).toBeLessThanOrEqual(1e-6);
    expect(exact.supportTension_n).toBeCloseTo(908.8556, 4);
    expect(supportTension_n(tension_n, 50, parabola_m)).toBeCloseTo(908.7894, 4);
  });

  it(titled("2-18 a board of 40 in, 1/2 in and 10 lbf tell 200 lbf", board), () => {
    const told_n = tensionFromPull_n(si("force", "10 lbf"), si("length", "40 in"), si("length", "0.5 in"));
    expect(inUnit("force", told_n, "lbf")).toBeCloseTo(200, 9);
  });

  it(titled("2-19 a metre, 12.5 mm and 20 N tell 400 N", board), () => {
    expect(tensionFromPull_n(20, 1, 0.0125)).toBeCloseTo(400, 9);
    expect(dropUnderWeight_m(20, 1, 400)).toBeCloseTo(0.0125, 12);
  });

  it(titled("2.4 250 lbf as a share of what 12 1/2 gauge holds", supplier), () => {
    const share = (tensile: "grade-200" | "grade-180" | "grade-140" | "low-carbon") =>
      si("force", "250 lbf") / breakingLoad_n({ diameter_mm: si("diameter", "12.5 ga"), tensile });
    expect(share("grade-200")).toBeCloseTo(0.1624, 4);
    expect(share("grade-180")).toBeCloseTo(0.1804, 4);
    expect(share("grade-140")).toBeCloseTo(0.232, 4);
    // The article prints 460 lbf, 60 ksi make 461.9.
    expect(Math.abs(share("low-carbon") - 0.5435)).toBeLessThan(0.003);
  });
});
