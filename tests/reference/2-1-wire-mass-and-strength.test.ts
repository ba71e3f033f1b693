import { describe, expect, it } from "vitest";
import type { TensileClass } from "../../src/core/project/project.ts";
import { si } from "../../src/core/project/si.ts";
import { breakingLoad_n, wireArea_m2, wireMass_kgpm } from "../../src/core/trellis/mechanics/steel.ts";
import { gaugeDiameter_mm, inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.1: area, mass and breaking load of steel wire. */

const supplier: Source = {
  computedAsPublished: "a fence-wire supplier's article: 1,540 lb and 460 lb for 12 1/2 gauge",
};
const computed: Source = { computed: "pi d2 / 4, steel of 7850 kg/m3, strength times area" };

const breaking_lbf = (gauge: number, tensile: TensileClass) =>
  inUnit("force", breakingLoad_n({ diameter_mm: diameter_mm(gauge), tensile }), "lbf");
const mass_kgpm = (diameter: number) => wireMass_kgpm({ diameter_mm: diameter, coating: "bare" });

function diameter_mm(gauge: number): number {
  const found = gaugeDiameter_mm(gauge);
  if (found === null) throw new Error(`no gauge ${gauge}`);
  return found;
}

const strengthTolerance_lbf = 0.5;
const lowCarbonTolerance_lbf = 2;
const lengthTolerance = 0.01;

describe("2.1 diameter, area, mass and breaking load of wire", () => {
  it(titled("2-1 12 1/2 gauge of grade 200 breaks at 1539.5 lbf", supplier), () => {
    expect(Math.abs(breaking_lbf(12.5, "grade-200") - 1539.5)).toBeLessThanOrEqual(strengthTolerance_lbf);
    expect(Math.abs(breaking_lbf(12.5, "grade-200") - 1540)).toBeLessThanOrEqual(1);
  });

  it(titled("2-2 12 1/2 gauge of low carbon steel breaks at 461.9 lbf", supplier), () => {
    expect(Math.abs(breaking_lbf(12.5, "low-carbon") - 461.9)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(breaking_lbf(12.5, "low-carbon") - 460)).toBeLessThanOrEqual(lowCarbonTolerance_lbf);
  });

  it(titled("2-3 4000 ft of 12 1/2 gauge weigh 104.787 lb", computed), () => {
    const coil_kg = mass_kgpm(diameter_mm(12.5)) * si("length", "4000 ft");
    expect(coil_kg).toBeCloseTo(47.5305, 3);
    expect(inUnit("mass", coil_kg, "lb")).toBeCloseTo(104.787, 3);
  });

  it.each([
    { id: "2-4a", mass_kg: 25, diameter: 2.5, length_m: 648.784 },
    { id: "2-4b", mass_kg: 25, diameter: 2, length_m: 1013.73 },
    { id: "2-4c", mass_kg: 25, diameter: 1.8, length_m: 1251.51 },
    { id: "2-5", mass_kg: 50, diameter: 3.15, length_m: 817.315 },
    { id: "2-6b", mass_kg: 23, diameter: 2.5, length_m: 596.882 },
  ])("$id: $mass_kg kg of $diameter mm wire are $length_m m (computed)", ({ mass_kg, diameter, length_m }) => {
    expect(Math.abs(mass_kg / mass_kgpm(diameter) - length_m)).toBeLessThanOrEqual(lengthTolerance);
  });

  it(titled("2-6a 51 lb of 12 1/2 gauge are 1946.81 ft", computed), () => {
    const length_m = si("mass", "51 lb") / mass_kgpm(diameter_mm(12.5));
    expect(Math.abs(inUnit("length", length_m, "ft") - 1946.81)).toBeLessThanOrEqual(lengthTolerance);
  });

  it.each([
    { gauge: 9, area_mm2: 11.144, gpm: 87.4801, lbf: [3454.6, 3109.2, 2418.2, 1036.4] },
    { gauge: 10, area_mm2: 9.23474, gpm: 72.4927, lbf: [2862.8, 2576.5, 2003.9, 858.83] },
    { gauge: 11, area_mm2: 7.35752, gpm: 57.7565, lbf: [2280.8, 2052.8, 1596.6, 684.25] },
    { gauge: 12, area_mm2: 5.63978, gpm: 44.2723, lbf: [1748.3, 1573.5, 1223.8, 524.5] },
    { gauge: 12.5, area_mm2: 4.96624, gpm: 38.985, lbf: [1539.5, 1385.6, 1077.7, 461.86] },
    { gauge: 13, area_mm2: 4.24228, gpm: 33.3019, lbf: [1315.1, 1183.6, 920.58, 394.53] },
    { gauge: 14, area_mm2: 3.24293, gpm: 25.457, lbf: [1005.3, 904.78, 703.72, 301.59] },
    { gauge: 15, area_mm2: 2.62677, gpm: 20.6202, lbf: [814.3, 732.87, 570.01, 244.29] },
    { gauge: 16, area_mm2: 1.97933, gpm: 15.5377, lbf: [613.59, 552.23, 429.51, 184.08] },
  ])("the table's row of $gauge gauge (computed from the Steel Wire Gauge, read)", ({ gauge, area_mm2, gpm, lbf }) => {
    const printed = 1e-4;
    expect(wireArea_m2(diameter_mm(gauge)) * 1e6).toBeCloseTo(area_mm2, 4);
    expect(mass_kgpm(diameter_mm(gauge)) * 1000).toBeCloseTo(gpm, 3);
    const classes = ["grade-200", "grade-180", "grade-140", "low-carbon"] as const;
    for (const [i, tensile] of classes.entries()) {
      expect(Math.abs(breaking_lbf(gauge, tensile) / Number(lbf[i]) - 1)).toBeLessThanOrEqual(printed);
    }
  });

  it("a wire of unknown class is no stronger than one of low carbon", () => {
    expect(breaking_lbf(13, "unknown")).toBe(breaking_lbf(13, "low-carbon"));
  });

  it("zinc adds mass and no strength (class 3 about 0.25 kg/m2, from memory)", () => {
    const zinc_kgpm = wireMass_kgpm({ diameter_mm: 2.5, coating: "class-3" }) - mass_kgpm(2.5);
    expect(zinc_kgpm).toBeCloseTo(0.25 * Math.PI * 0.0025, 12);
  });
});
