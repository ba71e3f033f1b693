import { describe, expect, it } from "vitest";
import { si } from "../../src/core/project/si.ts";
import { sag_m } from "../../src/core/trellis/mechanics/sag.ts";
import { wireArea_m2 } from "../../src/core/trellis/mechanics/steel.ts";
import { changedTension_n, stretch_m, thermalTension_n } from "../../src/core/trellis/mechanics/stretch.ts";
import { inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.2: elongation, and tension over temperature and load. */

const hooke: Source = { computed: "Hooke's law, E 200 GPa or 29e6 psi" };
const change: Source = { fromMemory: "change of state of a span, any text on overhead lines" };

/** 29e6 psi, which US tables print. */
const usModulus_pa = 29e6 * 6894.757293168;
const area_m2 = wireArea_m2(2.5);
const gauge_m2 = wireArea_m2(si("diameter", "12.5 ga"));
const bay_m = 7.3152;
const bare = { tension_n: 890, weight_npm: 0.3778855 };
const force_n = 0.01;

describe("2.2 stretch and temperature", () => {
  it(titled("2-7 100 m of 2.5 mm wire under 890 N", hooke), () => {
    expect(Math.abs(stretch_m(890, 100, area_m2) - 0.0906547)).toBeLessThanOrEqual(1e-6);
  });

  it(titled("2-8 1000 ft of 12 1/2 gauge under 250 lbf", hooke), () => {
    const longer_m = stretch_m(si("force", "250 lbf"), si("length", "1000 ft"), gauge_m2, usModulus_pa);
    expect(Math.abs(inUnit("length", longer_m, "in") - 13.4389)).toBeLessThanOrEqual(1e-3);
  });

  it(titled("2-9 straight 2.5 mm wire that cools by 30 K", hooke), () => {
    expect(Math.abs(thermalTension_n(area_m2, -30) - 344.593)).toBeLessThanOrEqual(1e-3);
    expect(thermalTension_n(area_m2, -1)).toBeCloseTo(11.48645, 5);
  });

  it(titled("2-10 straight 12 1/2 gauge, per degree and per 50 degrees Fahrenheit", hooke), () => {
    const cooled_lbf = (degrees: number) =>
      inUnit("force", thermalTension_n(gauge_m2, -degrees / 1.8, usModulus_pa), "lbf");
    expect(Math.abs(cooled_lbf(1) - 1.451014)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(cooled_lbf(50) - 72.5507)).toBeLessThanOrEqual(1e-4);
  });

  it.each([
    { warming_k: -30, tension_n: 1234.404 },
    { warming_k: 20, tension_n: 660.593 },
    { warming_k: 30, tension_n: 546.06 },
  ])(
    "2-11 a bay of bare wire that warms by $warming_k K (from memory: change of state)",
    ({ warming_k, tension_n }) => {
      const changed_n = changedTension_n(bare, bare.weight_npm, bay_m, area_m2, warming_k);
      expect(Math.abs(changed_n - tension_n)).toBeLessThanOrEqual(force_n);
    },
  );

  it(titled("2-12 a crop of 30 N/m between ends that do not give, and that do", change), () => {
    const loaded_n = changedTension_n(bare, 30.3778855, bay_m, area_m2, 0);
    expect(Math.abs(loaded_n - 1640.342)).toBeLessThanOrEqual(force_n);
    expect(sag_m(30.3778855, bay_m, loaded_n)).toBeCloseTo(0.123876, 6);
    expect(sag_m(30.3778855, bay_m, 890)).toBeCloseTo(0.228313, 6);
  });

  it(titled("2-13 a crop of 50 N/m between ends that do not give", change), () => {
    const loaded_n = changedTension_n(bare, 50.3778855, bay_m, area_m2, 0);
    expect(Math.abs(loaded_n - 2122.631)).toBeLessThanOrEqual(force_n);
    expect(sag_m(50.3778855, bay_m, loaded_n)).toBeCloseTo(0.158755, 6);
  });
});
