import { beforeAll, describe, expect, it } from "vitest";
import { type BuiltScript, buildModule, buildPage, loadedWith } from "./support/page-build.ts";

/*
 * Weight of compressed script, in kB of 1000 bytes. Every budget has a floor as well: a number that falls far below has lost its meaning,
 * and is lowered in the commit that made it fall.
 */

let page: readonly BuiltScript[] = [];
let first: readonly BuiltScript[] = [];

beforeAll(async () => {
  page = await buildPage();
  const entry = page.find(({ isEntry }) => isEntry);
  const mapWorker = page.find(({ name }) => name === "maplibre-gl-worker");
  if (!entry || !mapWorker) throw new Error("the page has no entry or no worker");
  first = [...loadedWith(page, entry), mapWorker];
}, 60_000);

function kB(scripts: readonly BuiltScript[]): number {
  return scripts.reduce((sum, { gzip_bytes }) => sum + gzip_bytes, 0) / 1000;
}

function within(told: string, weight_kB: number, floor_kB: number, budget_kB: number): void {
  console.log(`${told}: ${weight_kB.toFixed(1)} kB of ${budget_kB}`);
  expect(weight_kB).toBeLessThanOrEqual(budget_kB);
  expect(weight_kB).toBeGreaterThanOrEqual(floor_kB);
}

describe("the weight of compressed script", () => {
  it("until a sample's rows are drawn: the page with the map and its worker", () => {
    // 620 is what the page promises. Of it the map takes 287 and its worker 147, which is out of our hands; the rest is a second's
    // reading on a poor country line (1 Mbit/s).
    within("first load", kB(first), 540, 620);
  });

  it("that is ours in it, the rest being the map", () => {
    // Room to grow within the promise: what is optional belongs behind an import().
    const ours = first.filter(({ name }) => !name.startsWith("maplibre-gl"));
    within("ours", kB(ours), 140, 185);
  });

  it("has nothing in it that is used by choice only", () => {
    const names = first.map(({ name }) => name);
    for (const chosen of [
      "planting-worker",
      "compass-reading",
      "desk",
      "thing-panel",
      "keeping",
      "imagery-desk",
      "hand-over-desk",
      "cutting-worker",
      "materials-desk",
      "compare-view",
      "drip-desk",
      "water-panel",
      "watering-worker",
    ]) {
      expect(page.map(({ name }) => name)).toContain(chosen);
      expect(names).not.toContain(chosen);
    }
  });

  it("keeps the reader of the structure a file of its own, so that it can be replaced", () => {
    // LGPL-3: 1.6 kB that must not be woven into ours.
    const reader = page.filter(({ name }) => name === "geojson-validation");
    expect(reader).toHaveLength(1);
    within("geojson-validation", kB(reader), 1, 3);
  });

  it("of the planting area, beside the page", () => {
    // The polygon overlay is 27 of it.
    within("planting area", kB(page.filter(({ name }) => name === "planting-worker")), 20, 32);
  });

  it("of the core without a map", async () => {
    // For a page or a service that plans and never draws: everything at once, the overlay, the formats and the whole of proj4 too. Structure,
    // loads, cutting plans, price lists and the side of a row as a drawing took it from 150 to 190; the route of the main line, its trench with
    // all its sayings, heights and the trench as a drawing from there to 238; the water (what it gives, trees under pressure, sizes, sets, evenness, the
    // season, advice) with all its sayings, accounts and charts from there to 310; two thousand coordinate systems, eleven formats with their findings, the
    // packer and what things brought in may be to 393. A page loads the last three late.
    within("core", kB([await buildModule("src/core/index.ts")]), 330, 410);
  }, 60_000);

  it("of the plugin, on a map that is there already", async () => {
    // What someone adds to a map of their own; they bring the plan, so no planner is in it.
    within("plugin", kB([await buildModule("src/plugin/index.ts", ["maplibre-gl"])]), 8, 20);
  }, 60_000);
});
