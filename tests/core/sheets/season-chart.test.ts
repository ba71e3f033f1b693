import { expect, test } from "vitest";
import { seasonOf } from "../../../src/core/drip/season/season-of.ts";
import type { Watering } from "../../../src/core/drip/watering.ts";
import type { Watered } from "../../../src/core/drip/watering-stage.ts";
import type { Monthly } from "../../../src/core/project/water-settings.ts";
import { seasonChart } from "../../../src/core/sheets/season-chart.ts";
import { seasonChartSheet, seasonChartSvg } from "../../../src/core/sheets/season-chart-svg.ts";
import { createWaterSet } from "../../support/create-water-set.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

/** Invented. */
const reference_mmpd: Monthly = [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1];

function watered(sketch: WateringSketch = {}, sets: Watering["sets"] = []): Watered {
  const job = createWateringJob({ season: { reference_mmpd }, ...sketch });
  const parts = { blocks: job.blocks.map(() => null), sets };
  return {
    job,
    watering: {
      ...parts,
      supply: null,
      laterals: [],
      emitters: null,
      pipes: [],
      highest: [],
      patterns: [],
      season: seasonOf(job, parts),
      firstRun: [],
      parts: [],
      isShort: false,
    },
  };
}

function times(text: string, part: string): number {
  return text.split(part).length - 1;
}

const drawn = (of: Watered, width_px = 720) =>
  seasonChartSvg(of, null, "Test ground", { units: "metric", width_px }) ?? "";
const said = (svg: string) => svg.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");

test("every month that is watered has its bars, and nothing is drawn at no place", () => {
  const svg = drawn(watered());
  const months = seasonChart(watered(), null)?.months ?? [];
  expect(times(svg, 'class="season-peak"')).toBe(months.filter(({ peak_lpw }) => peak_lpw > 0).length);
  expect(times(svg, 'class="season-usual"')).toBe(months.filter(({ usual_lpw }) => usual_lpw > 0).length);
  expect(times(svg, 'class="season-young"')).toBe(months.filter(({ young_lpw }) => young_lpw > 0).length);
  expect(times(svg, 'class="season-peak"')).toBeGreaterThan(3);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("the drawing needs nothing else, and says in words what it shows and how to read it", () => {
  const svg = drawn(watered());
  expect(svg).toContain("<title>Test ground, water of Block 1 through the year</title>");
  expect(times(svg, "http")).toBe(1);
  expect(said(svg)).toContain("most in July");
  expect(said(svg)).toMatch(/First watering about \d+ May/);
  expect(said(svg)).toContain("Outlined: what is given at peak. Filled: what is usually given. Ring: young vines.");
});

test("what the hours a day bring is said, and drawn where it lies near the bars", () => {
  const sets = Array.from({ length: 4 }, (_, i) => createWaterSet({ laterals: [i] }));
  const scarce = drawn(watered({ water: { hoursADay_h: 20 } }, sets));
  expect(said(scarce)).toMatch(
    /20 h a day bring at most [\d.]+ L a vine a week with all sets in turn, less than the usual/,
  );
  expect(times(scarce, 'class="chart-counted"')).toBe(1);
  const ample = drawn(watered({ water: { hoursADay_h: 24 }, drip: { emitterFlow_lph: 20 } }, sets));
  expect(said(ample)).toContain("enough.");
  expect(times(ample, 'class="chart-counted"')).toBe(0);
});

test("while there are no sets the flow is said that it takes", () => {
  const peak_lpd = Number(seasonChart(watered(), null)?.peak.peak_lpd);
  expect(said(drawn(watered()))).toMatch(
    /To give it in 12 h a day takes [\d.]+ L\/h usually and [\d.]+ L\/h at peak, for the whole block/,
  );
  expect(said(drawn(watered()))).toContain(`${String(Math.round((peak_lpd / 12) * 100) / 100)} L/h at peak`);
});

test("a narrow drawing leaves the numbers to the page, and writes months by their letter", () => {
  expect(said(drawn(watered()))).toContain("peak, h/day");
  const narrow = drawn(watered(), 360);
  expect(said(narrow)).not.toContain("peak, h/day");
  expect(narrow).toContain(">J<");
});

test("in gallons the numbers are gallons", () => {
  const svg = seasonChartSvg(watered(), null, "Test ground", { units: "us" }) ?? "";
  expect(svg).toContain("a vine a week, gal");
  const peak_l = Number(seasonChart(watered(), null)?.peak.peak_lpw);
  expect(svg).toContain(`>${(peak_l / 3.785411784).toFixed(1)}<`);
});

test("each block has a drawing, and there is none of a season that is not known or of no block", () => {
  const two = watered({ blocks: 2, rows: 2 });
  expect(seasonChart(two, "2")?.block).toBe("Block 2");
  expect(seasonChart(two, "3")).toBeNull();
  const unknown = watered({ season: {} });
  expect(seasonChartSvg(unknown, null, "Test ground", { units: "metric" })).toBeNull();
  expect(seasonChartSheet(unknown, null, { units: "metric" })).toBeNull();
});

test("a page gets the drawing without its words", () => {
  const sheet = seasonChartSheet(watered(), null, { units: "metric" });
  expect(sheet?.svg).not.toContain("Outlined");
  expect(sheet?.reading[0]).toContain("Outlined");
  expect(sheet?.label).toContain("most in July");
});

test("a soil that lasts is said to last, and needs no wedge", () => {
  const deep = watered({ season: { reference_mmpd, soil_mmpm: 500, roots_m: 5, depletion_ratio: 1 } });
  expect(said(drawn(deep))).toContain("The soil and the rain last through the season.");
  expect(times(drawn(deep), 'class="season-first"')).toBe(0);
});
