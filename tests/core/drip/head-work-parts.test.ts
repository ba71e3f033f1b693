import { expect, test } from "vitest";
import { headWorkParts } from "../../../src/core/drip/head-work-parts.ts";
import { supplyOf } from "../../../src/core/drip/supply.ts";
import { usualHeadWork, usualWater } from "../../../src/core/project/water-defaults.ts";
import type { HeadWorkKind } from "../../../src/core/project/water-settings.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

function partsOf(kinds: readonly HeadWorkKind[], sketch: WateringSketch = {}) {
  const job = createWateringJob({ ...sketch, water: { headWorks: kinds.map(usualHeadWork), ...sketch.water } });
  return headWorkParts(job, supplyOf(job));
}

test("the usual head works are bought in the order water meets them, both gauges as one line", () => {
  const usual = usualWater("metric").headWorks.map(({ kind }) => kind);
  expect(partsOf(usual).map(({ article, quantity }) => [article, quantity])).toEqual([
    ["isolating-valve", 1],
    ["backflow-device", 1],
    ["check-valve", 1],
    ["gauge", 2],
    ["filter", 1],
    ["flow-meter", 1],
    ["air-vent", 1],
  ]);
});

test("nothing is bought while nobody knows the water", () => {
  expect(partsOf(["filter"], { water: { kind: "unknown" } })).toEqual([]);
});

test("a valve says the pressure with nothing flowing and the flow of all rows that it has to stand", () => {
  const [valve] = partsOf(["isolating-valve"]);
  // 4 rows of 20 vines with 2 L/h each, and a tank 15 m up.
  expect(text(valve?.spec ?? [], "metric")).toBe("for 147.1 kPa or more and up to 160 L/h");
});

test("a supply that gives less than all rows take says so much", () => {
  const [valve] = partsOf(["isolating-valve"], { water: { limitFlow_lph: 100 } });
  expect(text(valve?.spec ?? [], "metric")).toContain("up to 100 L/h");
});

test("regulators of two settings are two articles", () => {
  const headWorks = [200, 300].map((outlet_kpa) => ({ ...usualHeadWork("regulator"), outlet_kpa }));
  const parts = partsOf([], { water: { headWorks } });
  expect(parts.map(({ article }) => article)).toEqual(["regulator-200kpa", "regulator-300kpa"]);
  expect(text(parts[0]?.spec ?? [], "metric-bar")).toContain("set to 2 bar");
});

test("small emitters ask for a finer filter", () => {
  const spec = (emitterFlow_lph: number) =>
    text(partsOf(["filter"], { drip: { emitterFlow_lph } })[0]?.spec ?? [], "us");
  expect(spec(1.6)).toContain("finer than for larger ones");
  expect(spec(1.9)).not.toContain("finer");
});

test("what can hurt says who may do it", () => {
  const [device, port] = partsOf(["backflow-device", "injector-port"]);
  expect(device?.purpose).toContain("your authority approves, fitted and tested by whoever is licensed to");
  expect(port?.purpose).toContain("only behind a backflow device");
});
