import { expect, test } from "vitest";
import { articlePrices } from "../../../src/core/drip/article-prices.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

function partsOf(sketch: WateringSketch) {
  return waterRows(createWateringJob(sketch))?.parts ?? [];
}

const namesOf = (sketch: WateringSketch) => partsOf(sketch).map(({ article, quantity }) => `${quantity} ${article}`);

test("a cock on each row takes no valve box, no wire and no controller", () => {
  expect(namesOf({ rows: 4, sets: { pattern: "cock-a-row", control: "controller" } })).toEqual([
    "4 row-cock",
    "4 flush-cap",
  ]);
});

test("each row takes its own cock and cap", () => {
  for (const part of partsOf({ rows: 3, sets: { pattern: "cock-a-row" } })) expect(part.perRow).toEqual([1, 1, 1]);
});

test("a valve for each set takes a box, and is of the size of the pipe behind it", () => {
  const job = createWateringJob({ rows: 4, sets: { count: 2 } });
  const watering = waterRows(job);
  const behind = watering?.pipes.find(({ line }) => line === 1)?.pipe.size;
  expect(watering?.parts.map(({ article, quantity }) => `${quantity} ${article}`)).toEqual([
    `2 set-valve-${behind}`,
    "2 valve-box",
    "4 flush-cap",
  ]);
});

test("valves at the source share a box, three in each", () => {
  const boxesOf = (count: number) =>
    partsOf({ rows: 8, sets: { pattern: "valves-at-source", count } })
      .filter(({ kind }) => kind === "valve-box")
      .map(({ article, quantity }) => `${quantity} ${article}`);
  expect([1, 3, 4, 7].map(boxesOf)).toEqual([
    ["1 valve-box"],
    ["1 valve-box-for-3"],
    ["2 valve-box-for-3"],
    ["3 valve-box-for-3"],
  ]);
});

test("where the ways of a set part at its valve, the valve is for the widest of them", () => {
  const job = createWateringJob({ rows: 3, vinesOfRow: { 0: 1, 1: 60, 2: 60 }, water: { tankLevel_m: 10.5 } });
  const line = {
    upstream: Int32Array.from([-1, 0, 1, 1, 3]),
    length_m: Float64Array.from([0, 5, 3, 60, 3]),
    height_m: new Float64Array(5),
  };
  const laterals = { ...job.laterals, point: Int32Array.from([2, 3, 4]) };
  const watering = waterRows({ ...job, line, laterals });
  const own = watering?.pipes.filter((pipe) => pipe.line === 1) ?? [];
  const widest = own.reduce((most, { pipe }) => Math.max(most, pipe.inside_mm), 0);
  expect(own[0]?.pipe.inside_mm).toBeLessThan(widest);
  const size = own.find(({ pipe }) => pipe.inside_mm === widest)?.pipe.size;
  expect(watering?.parts.map(({ article }) => article)).toContain(`set-valve-${size}`);
});

test("a regulator for each set, or for each row with cocks, says what it lets through", () => {
  expect(namesOf({ rows: 4, sets: { count: 2, regulator_kpa: 120 } })).toContain("2 set-regulator-120kpa");
  expect(namesOf({ rows: 4, sets: { pattern: "cock-a-row", regulator_kpa: 120 } })).toContain("4 set-regulator-120kpa");
});

test("a controller takes a wire to each valve, a common and a spare one along the trench", () => {
  const [wire] = partsOf({ rows: 4, sets: { count: 2, control: "controller" } }).filter(({ unit }) => unit === "m");
  // Valves stand 10 m and 16 m from the source; 1 m is left at each end.
  expect(wire?.pieces_m).toEqual([12, 18, 18, 18]);
  expect(wire?.quantity).toBe(66);
  expect(namesOf({ rows: 4, sets: { count: 2, control: "controller" } })).toContain("1 controller");
});

test("while the water is not known nothing of sets is bought", () => {
  expect(namesOf({ rows: 4, water: { kind: "unknown" } })).toEqual([]);
});

test("prices are those of the cheapest package, by piece; what is not compared is left out", () => {
  const entry = { mass_kg: null, note: null };
  const prices = articlePrices({
    prices: [
      { ...entry, article: "row-cock", size: 10, price: 50 },
      { ...entry, article: "row-cock", size: 1, price: 6 },
      { ...entry, article: "valve-box", size: 1, price: null },
      { ...entry, article: "vine", size: 1, price: 3 },
    ],
  });
  expect(prices).toEqual({ "row-cock": 5 });
});
