import { expect, test } from "vitest";
import { supplyOf } from "../../../src/core/drip/supply.ts";
import type { WateringJob } from "../../../src/core/drip/watering-job.ts";
import { supplyHead_m } from "../../../src/core/hydraulics/read-supply.ts";
import { usualHeadWork, usualWater } from "../../../src/core/project/water-defaults.ts";
import type { HeadWork, WaterSettings } from "../../../src/core/project/water-settings.ts";

const kpa = 1 / 9.80665;
const none: WaterSettings = { ...usualWater("metric"), headWorks: [] };

/** A source 100 m up, one row of 1000 emitters of 2 L/h. */
function jobWith(water: Partial<WaterSettings>): Pick<WateringJob, "water" | "source" | "laterals" | "blocks"> {
  const each = new Float64Array(1000);
  return {
    water: { ...none, ...water },
    source: { height_m: 100, isLevel: false, latitude_deg: 38 },
    blocks: [],
    laterals: {
      row: Int32Array.of(0),
      point: Int32Array.of(0),
      block: Int32Array.of(0),
      line: Int32Array.of(1),
      variety: Int32Array.of(0),
      vines: Int32Array.of(1000),
      riser_m: Float64Array.of(1),
      hose_m: Float64Array.of(2000),
      tailHeight_m: Float64Array.of(100),
      offsets: Uint32Array.of(0, 1000),
      at_m: each,
      height_m: each,
    },
  };
}

const curveOf = (water: Partial<WaterSettings>) => {
  const supply = supplyOf(jobWith(water));
  if (supply === null) throw new Error("no supply");
  return supply;
};

const bucket = { volume_l: 20, time_h: 20 / 3600, pressure_kpa: 240 };

test("water that is not known yet has no supply", () => {
  expect(supplyOf(jobWith({ kind: "unknown", staticPressure_kpa: 400, tests: [bucket] }))).toBeNull();
});

test("static pressure and one bucket make a curve that falls with the square of the flow", () => {
  const { atGauge, most_lps, static_m } = curveOf({ kind: "measured", staticPressure_kpa: 400, tests: [bucket] });
  expect(static_m).toBeCloseTo(100 + 400 * kpa, 9);
  expect(most_lps).toBeCloseTo(1, 12);
  expect(supplyHead_m(atGauge, 0)).toBeCloseTo(100 + 400 * kpa, 9);
  expect(supplyHead_m(atGauge, 1)).toBeCloseTo(100 + 240 * kpa, 9);
  expect(Math.abs(supplyHead_m(atGauge, 0.5031) - (100 + (400 - 160 * 0.5031 ** 2) * kpa))).toBeLessThan(0.002);
});

test("a bucket filled from an open outlet, without a gauge, ran at no pressure", () => {
  const { atGauge } = curveOf({
    kind: "measured",
    staticPressure_kpa: 400,
    tests: [{ ...bucket, pressure_kpa: null }],
  });
  expect(supplyHead_m(atGauge, 1)).toBeCloseTo(100, 9);
});

test("several buckets: the curve goes through each", () => {
  const { atGauge, most_lps } = curveOf({
    kind: "measured",
    staticPressure_kpa: 400,
    tests: [bucket, { ...bucket, time_h: 40 / 3600, pressure_kpa: 370 }],
  });
  expect(supplyHead_m(atGauge, 0.5)).toBeCloseTo(100 + 370 * kpa, 9);
  expect(supplyHead_m(atGauge, 1)).toBeCloseTo(100 + 240 * kpa, 9);
  expect(most_lps).toBeCloseTo(1, 12);
});

test("of two readings that disagree the lower pressure counts, so that heads never rise", () => {
  const { atGauge } = curveOf({
    kind: "measured",
    staticPressure_kpa: 400,
    tests: [{ ...bucket, time_h: 40 / 3600, pressure_kpa: 200 }, bucket],
  });
  expect(supplyHead_m(atGauge, 1)).toBeCloseTo(100 + 200 * kpa, 9);
});

test("a pump gives its points, straight between them, and no more flow than the last", () => {
  const pump = [
    { flow_lph: 0, pressure_kpa: 500 },
    { flow_lph: 3600, pressure_kpa: 450 },
    { flow_lph: 7200, pressure_kpa: 300 },
  ];
  const { atGauge, most_lps, least_lps } = curveOf({ kind: "pump", pump, leastFlow_lph: 1800 });
  expect(supplyHead_m(atGauge, 1.5)).toBeCloseTo(100 + 375 * kpa, 9);
  expect([most_lps, least_lps]).toEqual([2, 0.5]);
});

test("a pump without a point at no flow: nothing above its first point is counted on, closed valves have to stand more", () => {
  const pump = [
    { flow_lph: 3600, pressure_kpa: 450 },
    { flow_lph: 7200, pressure_kpa: 300 },
  ];
  const { atGauge, static_m } = curveOf({ kind: "pump", pump });
  expect(supplyHead_m(atGauge, 0)).toBeCloseTo(100 + 450 * kpa, 9);
  expect(static_m).toBeCloseTo(100 + 600 * kpa, 9);
});

test("a pump of which only the pressure at closed valves is known has no supply", () => {
  expect(supplyOf(jobWith({ kind: "pump", pump: [{ flow_lph: 0, pressure_kpa: 500 }] }))).toBeNull();
});

test("a tank is its level, at any flow", () => {
  const { dirty, most_lps, static_m } = curveOf({ kind: "tank", tankLevel_m: 12 });
  expect([supplyHead_m(dirty, 0), supplyHead_m(dirty, 9), static_m, most_lps]).toEqual([112, 112, 112, Infinity]);
});

test("a town's pressure is held up to its limit; without a limit or a bucket nobody knows the flow", () => {
  expect(curveOf({ kind: "town", staticPressure_kpa: 400, limitFlow_lph: 1800 }).most_lps).toBe(0.5);
  expect(supplyOf(jobWith({ kind: "town", staticPressure_kpa: 400 }))).toBeNull();
});

test("what others take is taken first, of the flow and of the pressure", () => {
  const { atGauge, most_lps, static_m } = curveOf({
    kind: "measured",
    staticPressure_kpa: 400,
    tests: [bucket],
    others_lph: 1800,
  });
  expect(most_lps).toBeCloseTo(0.5, 12);
  expect(supplyHead_m(atGauge, 0)).toBeCloseTo(100 + 360 * kpa, 9);
  expect(static_m).toBeCloseTo(100 + 400 * kpa, 9);
});

test("others that take all leave nothing", () => {
  const { most_lps } = curveOf({ kind: "measured", staticPressure_kpa: 400, tests: [bucket], others_lph: 9000 });
  expect(most_lps).toBe(0);
});

test("head works lose what they are stated to, a filter more when dirty, and with the square of the flow where it is known for one", () => {
  const headWorks: readonly HeadWork[] = [
    usualHeadWork("check-valve"),
    { ...usualHeadWork("filter"), loss_kpa: 20, dirtyLoss_kpa: 60, atFlow_lph: 3600 },
  ];
  const { clean, dirty } = curveOf({ kind: "town", staticPressure_kpa: 400, limitFlow_lph: 3600, headWorks });
  expect(supplyHead_m(clean, 1)).toBeCloseTo(100 + (400 - 5 - 20) * kpa, 9);
  expect(supplyHead_m(dirty, 1)).toBeCloseTo(100 + (400 - 5 - 60) * kpa, 9);
  expect(supplyHead_m(dirty, 0.5)).toBeCloseTo(100 + (400 - 5 - 15) * kpa, 9);
});

test("a regulator caps what comes, up to the very flow at which it no longer can", () => {
  const headWorks: readonly HeadWork[] = [
    { ...usualHeadWork("regulator"), loss_kpa: 0, dirtyLoss_kpa: 0, outlet_kpa: 300 },
  ];
  const { dirty } = curveOf({ kind: "measured", staticPressure_kpa: 400, tests: [bucket], headWorks });
  const held_lps = Math.sqrt(100 / 160);
  expect(supplyHead_m(dirty, 0)).toBeCloseTo(100 + 300 * kpa, 9);
  expect(supplyHead_m(dirty, held_lps)).toBeCloseTo(100 + 300 * kpa, 6);
  expect(supplyHead_m(dirty, 1)).toBeCloseTo(100 + 240 * kpa, 9);
});
