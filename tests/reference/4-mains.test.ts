import { describe, expect, it } from "vitest";
import { lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import { leastInside_mm, leastInsideForLoss_mm } from "../../src/core/hydraulics/least-inside.ts";
import { headLoss_m, velocity_mps } from "../../src/core/hydraulics/pipe-loss.ts";
import { pumpEnergy_kwhpm3, pumpPower_w } from "../../src/core/hydraulics/pump-power.ts";
import { rise_kpa, stiffness, surgeOf, waveSpeed_mps } from "../../src/core/hydraulics/surge.ts";
import { inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook, section 4.8: surge, pump, mains. */

const arithmetic: Source = { computed: "from the handbook's definitions" };
const pipeHandbook: Source = { fromMemory: "PVC pipe handbook, wave speed" };
const hazenWilliams = { law: lawCodes["hazen-williams"], roughness: 150, viscosity_m2ps: 1.004e-6 };
/** Wave speed in PVC by its diameter over its wall. */
const inPvc = (ratio: number) => waveSpeed_mps(stiffness.pvc, ratio - 2);
const footPerSecond_mps = 0.3048;

describe("4.8 surge", () => {
  it(titled("wave speed by DR 14, 18, 21, 26, m/s", pipeHandbook), () => {
    const printed: readonly (readonly [number, number])[] = [
      [14, 449.16],
      [18, 393.939],
      [21, 363.719],
      [26, 325.855],
    ];
    for (const [ratio, expected_mps] of printed) expect(Math.abs(inPvc(ratio) - expected_mps)).toBeLessThan(1e-3);
  });

  it(
    titled("the handbook prints 17.4, 16.0 and 14.4 psi for a stop of 1 ft/s in DR 18, 21 and 26", pipeHandbook),
    () => {
      const printed: readonly (readonly [number, number])[] = [
        [18, 17.4],
        [21, 16.0],
        [26, 14.4],
      ];
      for (const [ratio, expected_psi] of printed) {
        const own = inUnit("pressure", rise_kpa(surgeOf(inPvc(ratio), footPerSecond_mps, 100, 0)), "psi");
        expect(Math.abs(own - expected_psi)).toBeLessThan(0.1);
      }
    },
  );

  it(titled("4-36 SDR 26, a stop of 1.5 m/s", arithmetic), () => {
    expect(Math.abs(rise_kpa(surgeOf(inPvc(26), 1.5, 100, 0)) - 488.7822)).toBeLessThan(1e-3);
  });

  it(titled("4-36 5 ft/s by the US form with 2.31 ft to a psi, 71.922 psi, is 0.14 % under ours", pipeHandbook), () => {
    const printed = (inPvc(26) / 0.3048 / (32.174 * 2.31)) * 5;
    expect(Math.abs(printed - 71.922)).toBeLessThan(1e-2);
    const own = inUnit("pressure", rise_kpa(surgeOf(inPvc(26), 5 * footPerSecond_mps, 100, 0)), "psi");
    expect(Math.abs(own / printed - 1.0014)).toBeLessThan(2e-4);
  });

  it(
    titled(
      "4-37 200 m of SDR 21: closing in 2 L/a, 1.09976 s, is as hard as at once, twice that half as hard",
      arithmetic,
    ),
    () => {
      const { fast_kpa, slow_kpa } = surgeOf(inPvc(21), 1, 200, 1.09976);
      expect(Math.abs(slow_kpa / fast_kpa - 1)).toBeLessThan(1e-5);
      const twice = surgeOf(inPvc(21), 1, 200, 2 * 1.09976);
      expect(Math.abs(rise_kpa(twice) / fast_kpa - 0.5)).toBeLessThan(1e-5);
    },
  );

  it(
    titled("4-38 water of 2.1 GPa, wall of 2.6 GPa, 0.3 m, 20 mm, 1450 m/s", {
      computedAsPublished: "an exercise's inputs",
    }),
    () => {
      expect(Math.abs(waveSpeed_mps(2.1 / 2.6, 300 / 20, 1450) - 400.3847)).toBeLessThan(1e-3);
    },
  );
});

describe("4.8 pump", () => {
  it(titled("4-39 5 L/s, 40 m, efficiency 0.65", arithmetic), () => {
    expect(Math.abs(pumpPower_w(5, 40, 0.65) - 3017.431)).toBeLessThan(1e-3);
    expect(Math.abs(pumpPower_w(5, 40, 1) - 1961.33)).toBeLessThan(1e-3);
    expect(Math.abs(pumpEnergy_kwhpm3(40, 0.65) - 0.167635)).toBeLessThan(1e-6);
  });

  it(
    titled("4-40 water horsepower as printed, gal/min times feet over 3960, is 0.1 % under ours", {
      fromMemory: "handbooks",
    }),
    () => {
      const gpm_lps = 0.0630901964;
      const horsepower_w = 745.6999;
      const ours = pumpPower_w(79.25 * gpm_lps, 131.2 * 0.3048, 1) / horsepower_w;
      const printed = (79.25 * 131.2) / 3960;
      expect(Math.abs(printed - 2.625657)).toBeLessThan(1e-6);
      expect(Math.abs(ours / printed - 1.001)).toBeLessThan(5e-4);
      const withLoss = pumpPower_w(30 * gpm_lps, 100 * 0.3048, 0.6) / horsepower_w;
      expect(Math.abs(withLoss / 1.262626 - 1.001)).toBeLessThan(5e-4);
    },
  );
});

describe("4.8 mains", () => {
  it(titled("4-42 120 m at 2 L/s, C 150", arithmetic), () => {
    const printed: readonly (readonly [number, number])[] = [
      [55.1942, 1.610079],
      [54.0766, 1.778777],
      [52.5018, 2.054195],
      [44.0436, 4.833447],
    ];
    for (const [inside_mm, expected_m] of printed) {
      const own_m = headLoss_m({ ...hazenWilliams, inside_mm }, 120, 2);
      expect(Math.abs(own_m - expected_m)).toBeLessThan(1e-5);
    }
  });

  it(titled("4-43 60 m at 2 L/s and 60 m at 1 L/s, inside 55.1942 mm", arithmetic), () => {
    const pipe = { ...hazenWilliams, inside_mm: 55.1942 };
    expect(Math.abs(headLoss_m(pipe, 60, 2) + headLoss_m(pipe, 60, 1) - 1.0280418)).toBeLessThan(1e-6);
  });

  it(titled("4-44 least inside diameter for 2 L/s: 1.5 m/s; 1.5 m lost in 120 m", arithmetic), () => {
    expect(Math.abs(leastInside_mm(2, 1.5) - 41.20258)).toBeLessThan(1e-4);
    expect(Math.abs(velocity_mps(leastInside_mm(2, 1.5), 2) - 1.5)).toBeLessThan(1e-12);
    expect(Math.abs(leastInsideForLoss_mm(hazenWilliams, 2, 120, 1.5) - 56.00251)).toBeLessThan(1e-4);
  });
});
