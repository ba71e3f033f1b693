import { expect, test } from "vitest";
import { supplyOf } from "../../../src/core/drip/supply.ts";
import { gaugePressureAccount, mostFlowAccount, startPressureAccount } from "../../../src/core/drip/supply-accounts.ts";
import { supplyHead_m } from "../../../src/core/hydraulics/read-supply.ts";
import { usualHeadWork } from "../../../src/core/project/water-defaults.ts";
import type { WaterSettings } from "../../../src/core/project/water-settings.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const metre_kpa = 9.80665;
const tested: Partial<WaterSettings> = {
  kind: "measured",
  staticPressure_kpa: 400,
  tests: [
    { volume_l: 20, time_h: 20 / 3600, pressure_kpa: 240 },
    { volume_l: 20, time_h: 40 / 3600, pressure_kpa: 370 },
  ],
  others_lph: 360,
  margin_ratio: 0.2,
  headWorks: [
    { ...usualHeadWork("filter"), atFlow_lph: 1800 },
    { ...usualHeadWork("regulator"), outlet_kpa: 250 },
    usualHeadWork("flow-meter"),
  ],
};

test("the most that a set may take: what was measured, less others, less the margin", () => {
  expect(mostFlowAccount(createWateringJob({ water: tested }))?.value).toBeCloseTo((3600 - 360) * 0.8, 9);
  const limited = mostFlowAccount(createWateringJob({ water: { ...tested, limitFlow_lph: 1000 } }));
  expect(limited?.inputs[0]?.name).toBe("Limit of the supply");
  expect(limited?.value).toBeCloseTo((1000 - 360) * 0.8, 9);
});

test("nothing ends what a tank gives", () => {
  expect(mostFlowAccount(createWateringJob())).toBeNull();
  expect(gaugePressureAccount(createWateringJob(), 1)?.value).toBeCloseTo(15 * metre_kpa, 9);
});

test("the pressures that are told are those of the supply, at every flow", () => {
  const job = createWateringJob({ water: tested });
  const supply = supplyOf(job);
  if (supply === null) throw new Error("no supply");
  for (const flow_lps of [0.1, 0.27, 0.4, 0.61, 0.9]) {
    const gauge_kpa = gaugePressureAccount(job, flow_lps)?.value ?? NaN;
    expect(Math.abs(gauge_kpa - supplyHead_m(supply.atGauge, flow_lps) * metre_kpa)).toBeLessThan(0.05);
    for (const isDirty of [false, true]) {
      const { value } = startPressureAccount(job, gauge_kpa, flow_lps, isDirty);
      const read_m = supplyHead_m(isDirty ? supply.dirty : supply.clean, flow_lps);
      expect(Math.abs((value ?? NaN) - read_m * metre_kpa)).toBeLessThan(0.05);
    }
  }
});

test("of water that is not known nothing is told", () => {
  const job = createWateringJob({ water: { kind: "unknown" } });
  expect([mostFlowAccount(job), gaugePressureAccount(job, 1)]).toEqual([null, null]);
});
