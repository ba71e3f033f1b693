import { expect, test } from "vitest";
import { planJson } from "../../../src/core/exchange/plan-json.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { defaults } from "../../../src/core/project/defaults.ts";
import type { WaterSettings } from "../../../src/core/project/water-settings.ts";
import { at, createProject } from "../../support/create-project.ts";

/** A well beside the rows whose bucket tests feed them in more than one set. */
const tap: Partial<WaterSettings> = {
  kind: "measured",
  staticPressure_kpa: 400,
  tests: [{ volume_l: 20, time_h: 120 / 3600, pressure_kpa: 300 }],
};

function planWith(water: Partial<WaterSettings>) {
  return createPlanner().plan(
    createProject({
      sources: [{ key: "well", name: "Well", at: at([-8, 6]) }],
      water: { ...defaults.metric.water, ...water },
    }),
  );
}

const watered = planJson(planWith(tap)).drip;

test("water that is not known yet gives no supply and no sets, but what every row needs", () => {
  const plan = planWith({ kind: "unknown" });
  const { drip } = planJson(plan);
  expect(drip).toMatchObject({ water: "unknown", supply: null, sets: [], pipes: [], short: false });
  expect(drip.laterals.map(({ row }) => row)).toEqual(plan.rows?.rows.map(({ id }) => id));
  expect(drip.laterals.every(({ needed_kpa, gets }) => (needed_kpa ?? 0) > 50 && gets === null)).toBe(true);
});

test("the supply is pressures at the height of the gauge by flow to the field", () => {
  expect(watered.supply?.static_kpa).toBeCloseTo(400, 6);
  expect(watered.supply?.most_lph).toBeCloseTo(600, 6);
  expect(watered.supply?.counted_lph).toBeCloseTo(480, 6);
  expect(watered.supply?.gauge[0]).toEqual({ flow_lph: 0, pressure_kpa: expect.closeTo(400, 6) });
  expect(watered.supply?.gauge.at(-1)?.pressure_kpa).toBeCloseTo(300, 6);
});

test("every row is in one set, and what the set takes is what its rows get", () => {
  const inSets = watered.sets.flatMap(({ rows }) => rows);
  expect(watered.sets.length).toBeGreaterThan(1);
  expect(new Set(inSets).size).toBe(inSets.length);
  for (const { name, rows, flow_lph } of watered.sets) {
    const own = watered.laterals.filter(({ row }) => rows.includes(row));
    expect(own.every(({ set }) => set === name)).toBe(true);
    const sum_lph = own.reduce((sum, { gets }) => sum + (gets?.flow_lph ?? 0), 0);
    expect(Math.abs(sum_lph - flow_lph) / flow_lph).toBeLessThan(1e-4);
  }
});

test("a set's nodes are a tree from where the main line begins, with pressures, flows and the pipe that leads there", () => {
  for (const { nodes, source_kpa, flow_lph, rows } of watered.sets) {
    const [first] = nodes;
    expect(first).toMatchObject({ upstream: null, pipe: null, station_m: 0 });
    expect(first?.flow_lph).toBeCloseTo(flow_lph, 6);
    // The gauge is at height 0 here, the pipe lies below it.
    expect(first?.height_m).toBeLessThan(0);
    expect((first?.pressure_kpa ?? 0) + 9.80665 * (first?.height_m ?? 0)).toBeCloseTo(source_kpa, 6);
    nodes.slice(1).forEach(({ upstream, pipe }, i) => {
      expect(upstream).toBeLessThanOrEqual(i);
      expect(watered.pipes[pipe ?? -1]?.inside_mm).toBeGreaterThan(10);
    });
    expect(nodes.flatMap(({ row }) => row ?? []).sort()).toEqual([...rows].sort());
  }
});

test("places are [lon, lat] with at most 9 decimals", () => {
  const places = [
    ...watered.pipes.flatMap(({ positions }) => positions),
    ...watered.sets.flatMap(({ nodes }) => nodes.map(({ at: place }) => place)),
  ];
  expect(places.length).toBeGreaterThan(10);
  for (const place of places) {
    expect(place?.[0]).toBeCloseTo(-76.9, 1);
    expect(place?.[1]).toBeCloseTo(42.6, 1);
    expect(String(place?.[1]).split(".")[1]?.length ?? 0).toBeLessThanOrEqual(9);
  }
});

test("emitter flows of sets and blocks come with how even they are", () => {
  for (const evenness of [...watered.sets, ...watered.blocks].map((each) => each.evenness)) {
    expect(evenness?.emitters).toBeGreaterThan(0);
    expect(evenness?.lowest_lph).toBeLessThanOrEqual((evenness?.mean_lph ?? 0) + 1e-9);
    expect(evenness?.mean_lph).toBeLessThanOrEqual((evenness?.highest_lph ?? 0) + 1e-9);
    expect(evenness?.emission_ratio).toBeGreaterThan(0.5);
  }
});

test("the object survives JSON: what is not known is null, nothing is endless", () => {
  for (const drip of [watered, planJson(planWith({ kind: "tank", tankLevel_m: 30 })).drip]) {
    expect(JSON.parse(JSON.stringify(drip))).toEqual(drip);
  }
});
