import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { Watering, WaterSet } from "../../../src/core/drip/watering.ts";
import { valvePatterns } from "../../../src/core/project/water-settings.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const seed = 20261126;
const kpa_pm = 9.80665;

function watered(sketch: WateringSketch = {}): Watering {
  const watering = waterRows(createWateringJob(sketch));
  if (watering === null) throw new Error("nothing was worked out");
  return watering;
}

/** Town water of a pressure and a flow that is allowed. */
const town = (staticPressure_kpa: number, limitFlow_lph: number | null, margin_ratio = 0) =>
  ({ kind: "town", staticPressure_kpa, limitFlow_lph, margin_ratio, tankLevel_m: null }) as const;

function firstSet({ sets }: Watering): WaterSet {
  const [first] = sets;
  if (first === undefined) throw new Error("there is no set");
  return first;
}

describe("a watering", () => {
  it("waters rows in one set when the water is enough for all of them", () => {
    const { sets, isShort, supply } = watered({ rows: 4 });
    expect(supply).not.toBeNull();
    expect(isShort).toBe(false);
    expect(sets.map(({ laterals }) => laterals)).toEqual([[0, 1, 2, 3]]);
  });

  it("parts rows into as few sets as the allowed flow asks for", () => {
    // Four rows of 20 emitters of 2 L/h are 160 L/h.
    const { sets, isShort } = watered({ rows: 4, water: town(200, 100), sets: { regulator_kpa: 120 } });
    expect(isShort).toBe(false);
    expect(sets.map(({ name, laterals }) => `${name}: ${laterals.join(" ")}`)).toEqual(["1: 0 1", "2: 2 3"]);
  });

  it("makes as many sets as are asked for", () => {
    expect(watered({ rows: 4, sets: { count: 3 } }).sets).toHaveLength(3);
    expect(watered({ rows: 4, sets: { count: 9 } }).sets).toHaveLength(4);
  });

  it("keeps the reserve: with a third of the flow not counted on it takes one set more", () => {
    const sketch = { rows: 4, sets: { regulator_kpa: 120 } } as const;
    expect(watered({ ...sketch, water: town(200, 165) }).sets).toHaveLength(1);
    expect(watered({ ...sketch, water: town(200, 165, 1 / 3) }).sets).toHaveLength(2);
  });

  it("is short when a row alone takes more than is allowed, and still says what comes of it", () => {
    const { sets, isShort } = watered({ rows: 2, water: town(200, 30) });
    expect(isShort).toBe(true);
    expect(sets).toHaveLength(2);
  });

  it("stays with the fewest where the source has not head enough for any row", () => {
    const { sets, isShort } = watered({ rows: 8, water: { tankLevel_m: 3 } });
    expect([sets.length, isShort]).toEqual([1, true]);
  });

  it("is short when the pressure is less than rows need, in the fewest sets, for more would not help", () => {
    const { sets, isShort } = watered({ rows: 4, water: { tankLevel_m: 8 } });
    expect(isShort).toBe(true);
    expect(sets).toHaveLength(1);
    expect(firstSet({ sets } as Watering).spare_m).toBeLessThan(-2);
  });

  it("takes more sets where friction in pipe as wide as there is would take the pressure", () => {
    const narrow = createWateringJob().sizes.slice(0, 1);
    const sketch = { rows: 10, vines: 40, main_m: 120, sizes: narrow } as const;
    const { sets, isShort } = watered({ ...sketch, water: { tankLevel_m: 16 } });
    expect(isShort).toBe(false);
    expect(sets.length).toBeGreaterThan(1);
  });

  it("shows only the need while the water is not known or no route is laid", () => {
    for (const sketch of [{ water: { kind: "unknown" } }, { isWithoutLine: true }] as const) {
      const { sets, pipes, emitters, laterals, patterns, isShort } = watered(sketch);
      expect([sets, pipes, patterns, emitters, isShort]).toEqual([[], [], [], null, false]);
      expect(laterals).toHaveLength(4);
    }
  });

  it("leaves rows out that no trench gets to", () => {
    const { sets, emitters } = watered({ rows: 4, unreached: [2] });
    expect(sets.flatMap(({ laterals }) => laterals)).toEqual([0, 1, 3]);
    expect([...(emitters?.flow_lps.slice(40, 60) ?? [])].every((flow) => flow === 0)).toBe(true);
  });

  it("has nothing to water without rows", () => {
    expect(watered({ rows: 0 }).sets).toEqual([]);
  });

  it("holds pressure down behind regulators at set valves and at cocks", () => {
    for (const pattern of valvePatterns) {
      const { sets, emitters } = watered({ rows: 4, water: town(600, 5000), sets: { pattern, regulator_kpa: 120 } });
      expect(sets).toHaveLength(1);
      const most_m = Math.max(...(emitters?.pressure_m ?? []));
      expect(most_m).toBeLessThanOrEqual(120 / kpa_pm + 1e-6);
      expect(most_m).toBeGreaterThan(10);
    }
  });

  it("is short behind a regulator that lets too little through", () => {
    expect(watered({ water: town(600, 5000), sets: { regulator_kpa: 60 } }).isShort).toBe(true);
  });

  it("lays the person's pipe everywhere when it is to stay as set", () => {
    const job = createWateringJob({ rows: 6, sets: { sizing: "as-set" } });
    const pipes = waterRows(job)?.pipes ?? [];
    expect(pipes.length).toBeGreaterThan(0);
    expect(pipes.every(({ pipe }) => pipe.size === job.pipe.size)).toBe(true);
  });

  it("telescopes: no pipe is wider than the one it goes on from, and the last is narrower than the first", () => {
    const { pipes } = watered({ rows: 30, vines: 40, sets: { pattern: "cock-a-row" }, water: { tankLevel_m: 14 } });
    const insides_mm = pipes.map(({ pipe }) => pipe.inside_mm);
    expect(insides_mm).toEqual([...insides_mm].sort((a, b) => b - a));
    expect(Number(insides_mm[0])).toBeGreaterThan(Number(insides_mm.at(-1)));
  });

  it("compares the patterns of valves: cocks want least pipe, valves at the source most", () => {
    const { patterns } = watered({ rows: 8, sets: { count: 4 } });
    expect(patterns.map(({ pattern, valves }) => `${pattern} ${valves}`)).toEqual([
      "cock-a-row 8",
      "valve-a-set 4",
      "valves-at-source 4",
    ]);
    const [cocks = 0, valves = 0, source = 0] = patterns.map(({ pipe_m }) => pipe_m);
    expect(cocks).toBeCloseTo(10 + 7 * 3, 9);
    expect(valves).toBeCloseTo(10 + 6 * 3 + 4 * 3, 9);
    expect(source).toBeCloseTo(4 * 10 + (1 + 3 + 5 + 7) * 3, 9);
    expect(patterns.every(({ price }) => price === null)).toBe(true);
  });

  it("prices a pattern where the price list has all of it", () => {
    const prices = Object.fromEntries(createWateringJob().sizes.map(({ size }) => [`main-pipe-${size}`, 61]));
    const { patterns } = watered({ rows: 4, sets: { pattern: "cock-a-row" }, prices: { ...prices, "row-cock": 2 } });
    const [cocks, valves] = patterns;
    // 19 m in sticks of 6.096 m, and four cocks.
    expect(cocks?.price).toBeCloseTo((19 / 6.096) * 61 + 8, 6);
    expect(valves?.price).toBeNull();
  });

  it("says how long pipes and hoses take to fill", () => {
    const { sets } = watered({ rows: 1, vines: 20, sets: { pattern: "cock-a-row" } });
    const { fill_h, flow_lps } = firstSet({ sets } as Watering);
    // 40 m of hose of 15.24 mm, 10 m of pipe of 15.4432 mm and 1 m of riser of 20.574 mm.
    const contents_l = (Math.PI / 4) * (40 * 15.24 ** 2 + 10 * 15.4432 ** 2 + 20.574 ** 2) * 1e-3;
    expect(fill_h).toBeCloseTo(contents_l / (flow_lps * 3600), 9);
  });
});

/** Waterings of all kinds: level and sloped, plain and compensating, by each pattern of valves. */
const sketches = fc.record({
  rows: fc.integer({ min: 1, max: 12 }),
  blocks: fc.integer({ min: 1, max: 2 }),
  vines: fc.integer({ min: 1, max: 50 }),
  rise_ratio: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  lineRise_ratio: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  isCompensating: fc.boolean(),
  pattern: fc.constantFrom(...valvePatterns),
  follow: fc.constantFrom("rows", "blocks"),
  level_m: fc.double({ min: 4, max: 40, noNaN: true }),
  most_lph: fc.option(fc.integer({ min: 100, max: 2000 })),
  regulator_kpa: fc.option(fc.integer({ min: 80, max: 200 })),
});

function sketchOf(of: typeof sketches extends fc.Arbitrary<infer T> ? T : never): WateringSketch {
  const { isCompensating, pattern, follow, level_m, most_lph, regulator_kpa, ...sketch } = of;
  return {
    ...sketch,
    drip: isCompensating ? { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 70 } : {},
    water: { tankLevel_m: level_m, limitFlow_lph: most_lph },
    sets: { pattern, follow, regulator_kpa },
  };
}

describe("every watering", () => {
  it("loses no water: what enters a node leaves it again, and emitters give what the source does", () => {
    fc.assert(
      fc.property(sketches, (of) => {
        const job = createWateringJob(sketchOf(of));
        const { sets, emitters } = waterRows(job) ?? watered();
        for (const { nodes, laterals, flow_lps, isSettled } of sets) {
          expect(isSettled).toBe(true);
          const rest_lps = Float64Array.from(nodes.flow_lps);
          nodes.upstream.forEach((up, node) => {
            if (up >= 0) rest_lps[up] = Number(rest_lps[up]) - Number(nodes.flow_lps[node]);
          });
          let given_lps = 0;
          nodes.lateral.forEach((lateral, node) => {
            const [from, to] =
              lateral < 0 ? [0, 0] : [job.laterals.offsets[lateral], job.laterals.offsets[lateral + 1]];
            const own_lps = emitters?.flow_lps.slice(from, to).reduce((sum, each) => sum + each, 0) ?? 0;
            given_lps += own_lps;
            expect(Math.abs(Number(rest_lps[node]) - own_lps)).toBeLessThan(1e-6);
          });
          expect(Math.abs(given_lps - flow_lps)).toBeLessThan(1e-6);
          expect(nodes.lateral.filter((lateral) => lateral >= 0).sort()).toEqual(Int32Array.from(laterals).sort());
        }
      }),
      { seed, numRuns: 30 },
    );
  });

  it("loses head along every pipe, and gives every row its head unless it says it is short", () => {
    fc.assert(
      fc.property(sketches, (of) => {
        const { sets, laterals, isShort } = watered(sketchOf(of));
        for (const { nodes } of sets) {
          nodes.upstream.forEach((up, node) => {
            if (up >= 0) expect(Number(nodes.head_m[node])).toBeLessThanOrEqual(Number(nodes.head_m[up]) + 1e-9);
          });
          if (isShort) continue;
          nodes.lateral.forEach((lateral, node) => {
            if (lateral < 0) return;
            expect(Number(nodes.head_m[node])).toBeGreaterThan(Number(laterals[lateral]?.inlet_m) - 0.01);
          });
        }
      }),
      { seed, numRuns: 30 },
    );
  });

  it("has a pipe for every leg of every set, and each of them once", () => {
    fc.assert(
      fc.property(sketches, (of) => {
        const { sets, pipes } = watered(sketchOf(of));
        const laid = pipes.flatMap(({ line, points }) => points.map((point) => `${line} ${point}`));
        expect(new Set(laid).size).toBe(laid.length);
        for (const { nodes } of sets) {
          nodes.pipe.forEach((pipe, node) => {
            if (Number(nodes.point[node]) > 0) expect(pipes[pipe]?.points).toContain(nodes.point[node]);
          });
        }
        const tees = pipes.reduce((sum, pipe) => sum + pipe.tees.length, 0);
        expect(tees).toBe(sets.reduce((sum, { laterals }) => sum + laterals.length, 0));
      }),
      { seed, numRuns: 30 },
    );
  });

  it("never has less pressure through wider pipe", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 6 }), (rows, size) => {
        const job = createWateringJob({ rows, vines: 30, sets: { sizing: "as-set", count: 1 } });
        const [narrow, wide] = [size, size + 1].map((i) => {
          const pipe = job.sizes[i] ?? job.pipe;
          return waterRows({ ...job, pipe })?.sets[0]?.spare_m ?? Number.NaN;
        });
        expect(Number(wide)).toBeGreaterThanOrEqual(Number(narrow));
      }),
      { seed, numRuns: 30 },
    );
  });

  it("gives two rows alike on both sides of a parting the same", () => {
    const job = createWateringJob({ rows: 2, vines: 40, lineRise_ratio: 0.02, sets: { pattern: "cock-a-row" } });
    const line = {
      upstream: Int32Array.from([-1, 0, 1, 1]),
      length_m: Float64Array.from([0, 30, 12, 12]),
      height_m: Float64Array.from([0, 1, 2, 2]),
    };
    const laterals = {
      ...job.laterals,
      point: Int32Array.from([2, 3]),
      height_m: new Float64Array(80).fill(2),
    };
    const { emitters } = waterRows({ ...job, line, laterals }) ?? watered();
    expect([...(emitters?.flow_lps.slice(0, 40) ?? [])]).toEqual([...(emitters?.flow_lps.slice(40) ?? [])]);
    expect(Number(emitters?.flow_lps[0])).toBeGreaterThan(0);
  });
});
