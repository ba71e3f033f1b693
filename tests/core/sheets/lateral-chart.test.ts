import { expect, test } from "vitest";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { Watered } from "../../../src/core/drip/watering-stage.ts";
import { lateralChart } from "../../../src/core/sheets/lateral-chart.ts";
import { lateralChartSheet, lateralChartSvg } from "../../../src/core/sheets/lateral-chart-svg.ts";
import { lineChart } from "../../../src/core/sheets/line-chart.ts";
import { lineChartSheet, lineChartSvg } from "../../../src/core/sheets/line-chart-svg.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

function watered(sketch: WateringSketch = {}): Watered {
  const job = createWateringJob({ rows: 6, vines: 30, ...sketch });
  return { job, watering: waterRows(job) };
}

const rowName = (row: number) => `row ${row + 1}`;

test("a row shows every emitter from the water end on, as it is while its set runs", () => {
  const chart = lateralChart(watered(), 2);
  expect(chart?.set).toBe("1");
  expect(chart?.emitters).toHaveLength(30);
  expect(chart?.emitters.map(({ at_m }) => at_m).slice(0, 3)).toEqual([2, 4, 6]);
  const pressures = chart?.emitters.map(({ pressure_kpa }) => pressure_kpa) ?? [];
  expect(pressures).toEqual([...pressures].sort((a, b) => b - a));
  expect(chart?.flow_lph).toBeGreaterThan(30 * 2);
});

test("while no set is worked out a row shows what it needs by itself", () => {
  const chart = lateralChart(watered({ water: { kind: "unknown" } }), 2);
  expect(chart?.set).toBeNull();
  expect(chart?.flow_lph).toBeCloseTo(30 * 2, 4);
});

test("rows without a lateral or without emitters have no chart", () => {
  expect(lateralChart(watered(), 99)).toBeNull();
  expect(lateralChart(watered({ drip: { emittersPerVine: 0 } }), 0)).toBeNull();
  expect(lateralChartSvg({ ...watered(), watering: null }, 0, "Row 1", { units: "metric" })).toBeNull();
});

test("the row's drawing says in words what it shows, and how to read it, in the reader's units", () => {
  const metric = lateralChartSheet(watered(), 2, "Row 3", { units: "metric" });
  expect(metric?.label).toMatch(/^Row 3 while set 1 runs .*kPa at its first emitter, .*nominal 2 L\/h/);
  expect(metric?.reading.join(" ")).toContain("does not begin at nothing");
  expect(lateralChartSheet(watered(), 2, "Row 3", { units: "us" })?.label).toMatch(/psi at its first emitter/);
  const svg = lateralChartSvg(watered(), 2, "Row 3", { units: "metric" }) ?? "";
  expect(svg).toMatch(/^<svg .*role="img"/);
  expect(svg.match(/class="chart-dot"/g)).toHaveLength(30);
  expect(svg).not.toMatch(/NaN|undefined|Infinity/);
});

test("a compensating emitter's range is drawn to read against", () => {
  const drip = { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 70 } as const;
  expect(lateralChart(watered({ drip }), 0)?.least_kpa).toBeCloseTo(70, 9);
  expect(lateralChartSvg(watered({ drip }), 0, "Row 1", { units: "metric" })).toContain("least of their range");
});

test("the line of a set leads from the source to the tee with least to spare, pressure falling on the level", () => {
  const water = watered();
  const chart = lineChart(water, 0);
  const set = water.watering?.sets[0];
  expect(chart?.points[0]).toMatchObject({ at_m: 0, pipe: null });
  expect(chart?.row).toBe(water.job.laterals.row[set?.sparest ?? -1]);
  const pressures = chart?.points.map(({ pressure_kpa }) => pressure_kpa) ?? [];
  expect(pressures).toEqual([...pressures].sort((a, b) => b - a));
  const flows = chart?.points.map(({ flow_lph }) => flow_lph) ?? [];
  expect(flows).toEqual([...flows].sort((a, b) => b - a));
  expect(flows[0]).toBeCloseTo(3600 * (set?.flow_lps ?? 0), 6);
  expect((pressures.at(-1) ?? 0) - (chart?.needed_kpa ?? 0)).toBeCloseTo(9.80665 * (set?.spare_m ?? 0), 3);
});

test("the line's drawing names its pipes where they begin and says what its end needs", () => {
  const sheet = lineChartSheet(watered(), 0, rowName, { units: "metric" });
  expect(sheet?.label).toMatch(/^Set 1 takes .* where the main line begins, .* at the tee of row 6, which needs /);
  const svg = lineChartSvg(watered(), 0, rowName, { units: "us" }) ?? "";
  expect(svg).toContain("PVC Schedule 40");
  expect(svg).toContain("needed at the last tee");
  expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  expect(lineChartSvg(watered(), 9, rowName, { units: "us" })).toBeNull();
});
