import { expect, test } from "vitest";
import { setDemands } from "../../../src/core/drip/set-demands.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { Watered } from "../../../src/core/drip/watering-stage.ts";
import { usualHeadWork } from "../../../src/core/project/water-defaults.ts";
import type { WaterSettings } from "../../../src/core/project/water-settings.ts";
import { type ChartPoint, supplyChart } from "../../../src/core/sheets/supply-chart.ts";
import { supplyChartSheet, supplyChartSvg } from "../../../src/core/sheets/supply-chart-svg.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const tap: Partial<WaterSettings> = {
  kind: "measured",
  staticPressure_kpa: 400,
  tests: [{ volume_l: 20, time_h: 60 / 3600, pressure_kpa: 250 }],
  others_lph: 100,
  margin_ratio: 0.2,
  headWorks: [usualHeadWork("filter"), usualHeadWork("flow-meter")],
};

/** 12 rows of 60 vines: 1440 L/h together, so that the tap feeds them in two sets. */
function watered(water: Partial<WaterSettings> = tap, more: WateringSketch = {}): Watered {
  const job = createWateringJob({ rows: 12, vines: 60, ...more, water });
  return { job, watering: waterRows(job) };
}

function chartOf(each: Watered) {
  const chart = supplyChart(each);
  if (chart === null) throw new Error("no chart");
  return chart;
}

/** Pressure of a line at a flow, straight between its points. */
function at_kpa(points: readonly ChartPoint[], flow_lph: number): number {
  const i = points.findIndex((point) => point.flow_lph >= flow_lph);
  const [a, b] = [points[i - 1], points[i]];
  if (a === undefined || b === undefined) return Number.NaN;
  return a.pressure_kpa + ((b.pressure_kpa - a.pressure_kpa) * (flow_lph - a.flow_lph)) / (b.flow_lph - a.flow_lph);
}

test("every set runs where the water that comes behind a dirty filter meets what the set takes", () => {
  const { curves, sets } = chartOf(watered());
  const dirty = curves.find(({ of }) => of === "dirty")?.points ?? [];
  expect(sets.length).toBeGreaterThan(1);
  for (const { at, demand } of sets) {
    expect(Math.abs(at_kpa(dirty, at.flow_lph) - at.pressure_kpa)).toBeLessThan(0.5);
    const there = demand.find(({ pressure_kpa }) => Math.abs(pressure_kpa - at.pressure_kpa) < 1e-6);
    expect(Math.abs((there?.flow_lph ?? 0) - at.flow_lph) / at.flow_lph).toBeLessThan(1e-3);
  }
});

test("a set takes more at more pressure", () => {
  const { job, watering } = watered();
  if (watering === null) throw new Error("not watered");
  for (const { flow_lps } of setDemands(job, watering)) {
    expect([...flow_lps]).toEqual([...flow_lps].sort((a, b) => a - b));
    expect(flow_lps.at(-1)).toBeGreaterThan(0);
  }
});

test("compensating emitters take the same from the head on at which all of them hold their flow", () => {
  const { job, watering } = watered(tap, {
    drip: { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 70 },
  });
  if (watering === null) throw new Error("not watered");
  for (const [i, { flow_lps, head_m }] of setDemands(job, watering).entries()) {
    const nominal_lps = ((watering.sets[i]?.laterals.length ?? 0) * 60 * 2) / 3600;
    expect([...flow_lps]).toEqual([...flow_lps].sort((a, b) => a - b));
    for (const [k, head] of head_m.entries()) {
      if (head > 20) expect(Math.abs(Number(flow_lps[k]) - nominal_lps) / nominal_lps).toBeLessThan(1e-3);
    }
  }
});

test("a regulator at a set's valve takes no more above what it lets through", () => {
  const { job, watering } = watered({ ...tap, staticPressure_kpa: 900 }, { sets: { regulator_kpa: 120 } });
  if (watering === null) throw new Error("not watered");
  const [demand] = setDemands(job, watering);
  const [last, before] = [demand?.flow_lps.at(-1) ?? 0, demand?.flow_lps.at(-2) ?? 1];
  expect(Math.abs(last - before) / last).toBeLessThan(1e-3);
});

test("what is counted on is the most less the margin", () => {
  const { most_lph, counted_lph } = chartOf(watered());
  expect(most_lph).toBeCloseTo(1100, 6);
  expect(counted_lph).toBeCloseTo(880, 6);
});

test("water that is not known has no chart", () => {
  expect(supplyChart(watered({ kind: "unknown" }))).toBeNull();
  expect(supplyChartSvg(watered({ kind: "unknown" }), "Home", { units: "metric" })).toBeNull();
});

test("the drawing numbers every set, titles itself and says in words what it shows", () => {
  const each = watered();
  const svg = supplyChartSvg(each, "Oak <field>", { units: "us" }) ?? "";
  expect(svg).toMatch(/^<svg [^>]*role="img"/);
  expect(svg).toContain("Oak &lt;field&gt;, water and sets");
  const { label, reading } = supplyChartSheet(each, { units: "us" }) ?? { label: "", reading: [] };
  expect(label).toMatch(/^The water gives \d+\.?\d* psi at the gauge with nothing running to the field, and the field/);
  for (const { name } of chartOf(each).sets) expect(label).toContain(`set ${name} takes`);
  expect(svg).toMatch(/>sets? 1/);
  expect(reading.join(" ")).toContain("20 % less than the most");
  expect(svg).toContain("pressure, psi");
  expect(svg).not.toMatch(/NaN|undefined|Infinity/);
});

test("its lines are told apart without colour: each has strokes of its own", () => {
  const svg = supplyChartSvg(watered(), "Home", { units: "metric" }) ?? "";
  const strokes = ["is-gauge", "is-clean", "is-dirty"].map((of) => {
    expect(svg).toContain(`chart-line ${of}`);
    return new RegExp(`\\.chart-line\\.${of}\\{[^}]*stroke-dasharray:([^;}]*)`).exec(svg)?.[1] ?? "whole";
  });
  expect(new Set(strokes).size).toBe(3);
});

test("the least that a pump holds steady is marked and told", () => {
  const pump = [
    { flow_lph: 0, pressure_kpa: 450 },
    { flow_lph: 1200, pressure_kpa: 250 },
  ];
  const each = watered({ kind: "pump", pump, leastFlow_lph: 300, headWorks: [] });
  expect(supplyChartSvg(each, "Home", { units: "metric" })).toContain(">least<");
  expect(supplyChartSheet(each, { units: "metric" })?.reading.join(" ")).toContain("with less than 300 L/h the pump");
});

test("a tank without an end is drawn as far as anything is taken from it", () => {
  const { most_lph, widest_lph, sets } = chartOf(watered({ kind: "tank", tankLevel_m: 15 }));
  expect(most_lph).toBeNull();
  expect(widest_lph).toBeCloseTo(Math.max(...sets.map(({ at }) => at.flow_lph)) * 1.6, 6);
});
