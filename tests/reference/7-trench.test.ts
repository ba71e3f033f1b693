import { describe, expect, it } from "vitest";
import { packsOf } from "../../src/core/materials/packs.ts";
import { defaults } from "../../src/core/project/defaults.ts";
import type { TrenchSettings } from "../../src/core/project/project.ts";
import { si } from "../../src/core/project/si.ts";
import { usualCover_m } from "../../src/core/project/usual-cover.ts";
import { engineerPast_m, ladderFrom_m, protectedFrom_m } from "../../src/core/trench/cautions.ts";
import { earthOf } from "../../src/core/trench/earth.ts";
import { swells } from "../../src/core/trench/paces.ts";
import { depthOf, profileOf } from "../../src/core/trench/profile.ts";
import { heapOf, prism_m3, sectionArea_m2, topWidth_m } from "../../src/core/trench/section.ts";
import { blockFace_m2, thrust_n } from "../../src/core/trench/thrust.ts";
import { trenchWidth_m } from "../../src/core/trench/trench-width.ts";
import { inUnit } from "../../src/core/units.ts";
import { createRoute } from "../support/create-route.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook, section 7. */

const arithmetic: Source = { computed: "from the handbook's definitions" };
const twoInch = {
  size: "pvc-40-2in",
  outside_mm: 60.325,
  inside_mm: 52.0446,
  stick_m: 6.096,
  joint: "solvent",
} as const;
const fourInch_mm = 114.3;

/** Earth of a straight level trench. */
function levelTrench(length_m: number, change: Partial<TrenchSettings>) {
  const settings: TrenchSettings = { ...defaults.metric.trench, pipe: twoInch, ...change };
  const layers = {
    cover_m: settings.cover_m,
    outside_m: settings.pipe.outside_mm / 1000,
    bedding_m: settings.bedding_m,
  };
  const route = createRoute([
    { x: 0, y: 0 },
    { x: length_m, y: 0 },
  ]);
  const steps = { stationStep_m: 5, groundStep_m: 7 };
  const { profile } = profileOf(route, { name: "main", points: [0, 1] }, () => 0, layers, steps);
  return {
    settings,
    layers,
    earth: earthOf(
      [profile],
      [],
      { pipes: [{ pipe: settings.pipe, length_m }], abreast_mm: [settings.pipe.outside_mm] },
      settings,
    ),
  };
}

describe("7 earth of a trench", () => {
  const hand = levelTrench(120, { tool: "hand", cover_m: 0.6, bedding_m: 0.1, swell_ratio: 0.25 });
  const tolerance = 1e-5;

  it(titled("7-1 120 m of 2 in. pipe under 0.6 m of cover on 0.1 m of bedding", arithmetic), () => {
    const { earth, layers, settings } = hand;
    expect(Math.abs(trenchWidth_m(settings) - 0.360325)).toBeLessThan(tolerance);
    expect(Math.abs(depthOf(layers) - 0.760325)).toBeLessThan(tolerance);
    expect(Math.abs(earth.cut_m3 - 32.875693)).toBeLessThan(tolerance);
    expect(Math.abs(earth.pipe_m3 - 0.3429776)).toBeLessThan(tolerance);
    expect(Math.abs(earth.bedding_m3 - 4.3239)).toBeLessThan(tolerance);
    expect(Math.abs(earth.surplus_m3 - 4.6668776)).toBeLessThan(tolerance);
    expect(Math.abs(earth.loose_m3 - 41.094616)).toBeLessThan(tolerance);
    expect(Math.abs(earth.backfill_m3 + earth.surplus_m3 - earth.cut_m3)).toBeLessThan(1e-12);
  });

  it(titled("7-2 the heap beside it", arithmetic), () => {
    const heap = heapOf(0.3424551);
    expect(Math.abs(heap.height_m - 0.4778111)).toBeLessThan(1e-6);
    expect(Math.abs(heap.base_m - 1.4334332)).toBeLessThan(1e-6);
    expect(Math.abs(hand.earth.heapHeight_m - 0.4778111)).toBeLessThan(1e-6);
    expect(Math.abs(hand.earth.heapBase_m - 1.4334332)).toBeLessThan(1e-6);
  });

  it(titled("7-3 12 by 24 in. and 400 ft long", arithmetic), () => {
    const depth_m = si("length", "24 in");
    const cut_m3 = prism_m3(si("length", "12 in"), depth_m, depth_m, 0, si("length", "400 ft"));
    expect(Math.abs(cut_m3 - 22.653477)).toBeLessThan(tolerance);
    expect(Math.abs(inUnit("earth", cut_m3, "yd3") - 29.62963)).toBeLessThan(tolerance);
  });

  it(
    titled("7-4 top widths and a section by slopes of soil classes A, B and C", {
      read: "29 CFR 1926 Subpart P appendix B, summary: 3/4, 1 and 1 1/2 to 1",
    }),
    () => {
      expect(Math.abs(topWidth_m(0.6, 1.8, 1.5) - 6)).toBeLessThan(1e-9);
      expect(Math.abs(topWidth_m(0.6, 1.8, 1) - 4.2)).toBeLessThan(1e-9);
      expect(Math.abs(topWidth_m(0.6, 1.8, 0.75) - 3.3)).toBeLessThan(1e-9);
      expect(Math.abs(sectionArea_m2(0.6, 1.8, 1.5) - 5.94)).toBeLessThan(1e-9);
    },
  );

  it(
    titled("7-5 1000 bank cubic yards of dense clay that swells by 30 %", {
      computedAsPublished: "public swell page: 1300 loose cubic yards, 186 loads of 7",
    }),
    () => {
      const length_m = 500;
      const depth_m = depthOf(hand.layers);
      const width_m = si("earth", "1000 yd3") / (length_m * depth_m);
      const { earth } = levelTrench(length_m, {
        cover_m: 0.6,
        bedding_m: 0.1,
        width_m,
        soil: "clay",
        swell_ratio: 0.3,
      });
      const loose_yd3 = inUnit("earth", earth.loose_m3, "yd3");
      expect(loose_yd3).toBeCloseTo(1300, 9);
      expect(packsOf(loose_yd3, 7)).toEqual([{ size: 7, count: 186 }]);
    },
  );

  it(titled("7-10 swell by soil where none is set", { fromMemory: "US Army FM 5-434" }), () => {
    expect(swells).toEqual({ sand: 0.11, loam: 0.25, clay: 0.43, rock: 0.5 });
    const { earth } = levelTrench(100, { soil: "clay", swell_ratio: null });
    expect(earth.loose_m3 / earth.cut_m3).toBeCloseTo(1.43, 12);
  });
});

describe("7 thrust", () => {
  const psi_kpa = si("pressure", "1 psi");
  const lbf_n = 4.4482216152605;

  it(titled("7-6 2 in. at 600 kPa: bends and an end", arithmetic), () => {
    expect(Math.abs(thrust_n(600, 60.325, 90) - 2425.218)).toBeLessThan(1e-3);
    expect(Math.abs(thrust_n(600, 60.325, 45) - 1312.519)).toBeLessThan(1e-3);
    expect(Math.abs(thrust_n(600, 60.325, null) - 1714.888)).toBeLessThan(1e-3);
  });

  it(
    titled("7-7 a block for 1800 lbf in clay that bears 500 psf", {
      computedAsPublished: "irrigation thrust-block handout: 3.6 ft2",
    }),
    () => {
      const face_m2 = blockFace_m2(1800 * lbf_n, si("pressure", "500 psf"), 1);
      expect(inUnit("area", face_m2, "ft2")).toBeCloseTo(3.6, 9);
    },
  );

  it(
    titled("7-8 an area of 29.802 in2 at 100 psi, 90 degrees, 1000 psf", {
      computedAsPublished: "published thrust sheet: 4215 lbf, 4.21 ft2",
    }),
    () => {
      const outside_mm = 25.4 * Math.sqrt((4 * 29.802) / Math.PI);
      const push_n = thrust_n(100 * psi_kpa, outside_mm, 90);
      expect(Math.abs(push_n / lbf_n - 4214.64)).toBeLessThan(1e-2);
      const face_m2 = blockFace_m2(push_n, si("pressure", "1000 psf"), 1);
      expect(Math.abs(inUnit("area", face_m2, "ft2") - 4.2146)).toBeLessThan(1e-2);
    },
  );

  it(titled("7-9 4 in. outside at 100 psi, 90 degrees, 1000 psf, half as much again", arithmetic), () => {
    const face_m2 = blockFace_m2(thrust_n(100 * psi_kpa, fourInch_mm, 90), si("pressure", "1000 psf"));
    expect(Math.abs(inUnit("area", face_m2, "ft2") - 3.373814)).toBeLessThan(1e-6);
    expect(Math.abs(face_m2 - 0.3134376)).toBeLessThan(1e-6);
  });

  it.each([
    ["2 in.", 60.325, 626.516, 339.068, 443.014],
    ["3 in.", 88.9, 1360.633, 736.369, 962.113],
    ["4 in.", fourInch_mm, 2249.21, 1217.263, 1590.431],
  ] as const)(
    "7-11 %s at 100 psi, lbf: bends of 90 and 45 degrees, tee or end (computed on outside diameters)",
    (_, outside_mm, bend, half, end) => {
      expect(Math.abs(thrust_n(100 * psi_kpa, outside_mm, 90) / lbf_n - bend)).toBeLessThan(1e-3);
      expect(Math.abs(thrust_n(100 * psi_kpa, outside_mm, 45) / lbf_n - half)).toBeLessThan(1e-3);
      expect(Math.abs(thrust_n(100 * psi_kpa, outside_mm, null) / lbf_n - end)).toBeLessThan(1e-3);
    },
  );

  it.each([
    [90, Math.SQRT2],
    [45, 0.7653669],
    [22.5, 0.3901806],
    [11.25, 0.1960343],
  ] as const)(
    "7-12 a bend of %d degrees is pushed %d times as hard as an end (computed: 2 sin of half the angle)",
    (angle_deg, times) => {
      expect(Math.abs(thrust_n(100, 50, angle_deg) / thrust_n(100, 50, null) - times)).toBeLessThan(1e-7);
    },
  );
});

describe("7 limits", () => {
  it(
    titled("7-13 cover where there is traffic, frost or farming", {
      read: "NRCS conservation practice standard 430-DD, statewide specification",
    }),
    () => {
      const inches = (outside_mm: number) => inUnit("length", usualCover_m(outside_mm), "in");
      for (const outside_mm of [21.336, 60.325, 73.025, 75]) expect(inches(outside_mm)).toBeCloseTo(18, 9);
      for (const outside_mm of [88.9, 110, fourInch_mm, 141.3]) expect(inches(outside_mm)).toBeCloseTo(24, 9);
      expect(inches(168.275)).toBeCloseTo(30, 9);
    },
  );

  it(
    titled("7-14 depths at which rules begin: 4, 5 and 20 ft", {
      read: "29 CFR 1926.651(c)(2), 1926.652(a)(1) and (b), public safety tables",
    }),
    () => {
      const feet = [ladderFrom_m, protectedFrom_m, engineerPast_m].map((limit_m) => inUnit("length", limit_m, "ft"));
      expect(feet.map((each) => Number(each.toFixed(9)))).toEqual([4, 5, 20]);
    },
  );
});
