import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { highestAccount, ratingAccount, velocityAccount } from "../../../src/core/drip/pressure-accounts.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { HighestPressure, Watering } from "../../../src/core/drip/watering.ts";
import type { WateringJob } from "../../../src/core/drip/watering-job.ts";
import { valvePatterns } from "../../../src/core/project/water-settings.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const kpa_pm = 9.80665;

function watered(job: WateringJob): Watering {
  const watering = waterRows(job);
  if (watering === null || watering.sets.length === 0) throw new Error("the water is known and a route is laid");
  return watering;
}

function of(
  watering: Watering,
  what: HighestPressure["what"],
  when: HighestPressure["when"],
): readonly HighestPressure[] {
  return watering.highest.filter((each) => each.what === what && each.when === when);
}

const most_kpa = (list: readonly HighestPressure[]) => Math.max(...list.map(({ pressure_kpa }) => pressure_kpa));

describe("with every valve closed", () => {
  it("the main line stands the water's height above its lowest place", () => {
    const job = createWateringJob({
      lineRise_ratio: -0.1,
      water: { tankLevel_m: 20 },
      sets: { pattern: "cock-a-row" },
    });
    // Four rows 3 m apart, the first 10 m from the source: the last tee lies 1.9 m below it.
    expect(most_kpa(of(watered(job), "pipe", "closed"))).toBeCloseTo((20 + 1.9) * kpa_pm, 9);
  });

  it("a regulator among the head works holds it down", () => {
    const base = { water: { tankLevel_m: 40 }, sets: { pattern: "cock-a-row" } } as const;
    const regulator = { kind: "regulator", loss_kpa: 0, dirtyLoss_kpa: 0, atFlow_lph: null, outlet_kpa: 200 } as const;
    const regulated = createWateringJob({ ...base, water: { ...base.water, headWorks: [regulator] } });
    expect(most_kpa(of(watered(createWateringJob(base)), "pipe", "closed"))).toBeCloseTo(40 * kpa_pm, 9);
    expect(most_kpa(of(watered(regulated), "pipe", "closed"))).toBeCloseTo(200, 9);
  });

  it("pipes behind the valves of sets are not pressed", () => {
    const sets = { pattern: "valve-a-set", count: 2 } as const;
    const watering = watered(createWateringJob({ rows: 8, sets }));
    const lines = new Set(of(watering, "pipe", "closed").map(({ pipe }) => watering.pipes[pipe]?.line));
    expect(lines).toEqual(new Set([0]));
    expect(watering.pipes.some(({ line }) => line > 0)).toBe(true);
  });

  it("no pipe in the field is pressed with valves at the source", () => {
    const watering = watered(createWateringJob({ sets: { pattern: "valves-at-source" } }));
    expect([...of(watering, "pipe", "closed"), ...of(watering, "pipe", "surge")]).toEqual([]);
    expect(of(watering, "pipe", "running").length).toBeGreaterThan(0);
  });

  it("a row that runs alone has nearly all of it with a cock on each row, and a regulator at its cock keeps it from that", () => {
    const base = { water: { tankLevel_m: 30 }, sets: { pattern: "cock-a-row" } } as const;
    expect(most_kpa(of(watered(createWateringJob(base)), "hose", "closed"))).toBeCloseTo(30 * kpa_pm, 6);
    const held = createWateringJob({ ...base, sets: { pattern: "cock-a-row", regulator_kpa: 120 } });
    expect(most_kpa(of(watered(held), "hose", "closed"))).toBeCloseTo(120, 6);
  });
});

describe("while sets run", () => {
  it("hose stands most at the end of a row that runs downhill", () => {
    const watering = watered(createWateringJob({ rise_ratio: -0.2 }));
    const emitter = most_kpa(of(watering, "emitter", "running"));
    expect(most_kpa(of(watering, "hose", "running"))).toBeCloseTo(emitter, 9);
    const level = watered(createWateringJob());
    expect(emitter).toBeGreaterThan(most_kpa(of(level, "emitter", "running")));
  });

  it("a clean filter leaves more than the dirty one that sets are solved with", () => {
    const filter = { kind: "filter", loss_kpa: 10, dirtyLoss_kpa: 30, atFlow_lph: null, outlet_kpa: null } as const;
    const watering = watered(createWateringJob({ water: { headWorks: [filter] } }));
    const solved_kpa = kpa_pm * Math.max(...(watering.emitters?.pressure_m ?? []));
    expect(most_kpa(of(watering, "emitter", "running"))).toBeCloseTo(solved_kpa + 20, 6);
  });

  it("regulators at set valves hold what is behind them, clean filter or not", () => {
    const filter = { kind: "filter", loss_kpa: 10, dirtyLoss_kpa: 30, atFlow_lph: null, outlet_kpa: null } as const;
    const sets = { pattern: "valve-a-set", regulator_kpa: 110 } as const;
    const watering = watered(createWateringJob({ water: { tankLevel_m: 40, headWorks: [filter] }, sets }));
    expect(most_kpa(of(watering, "emitter", "running"))).toBeLessThanOrEqual(110);
    expect(
      most_kpa(of(watering, "pipe", "running").filter(({ pipe }) => watering.pipes[pipe]?.line !== 0)),
    ).toBeCloseTo(110, 6);
  });
});

describe("a valve that closes", () => {
  const surge = (closing_s: number) =>
    of(
      watered(
        createWateringJob({ main_m: 200, water: { closing_h: closing_s / 3600 }, sets: { pattern: "valve-a-set" } }),
      ),
      "pipe",
      "surge",
    )[0]?.surge;

  it("slowly half as fast hits half as hard", () => {
    expect(Number(surge(2)?.slow_kpa) / Number(surge(4)?.slow_kpa)).toBeCloseTo(2, 9);
  });

  it("no slow closing is harder than one at once", () => {
    const [quick, slow] = [surge(0), surge(20)];
    expect(quick?.fast_kpa).toBe(slow?.fast_kpa);
    expect(quick?.slow_kpa).toBe(Infinity);
    expect(Number(slow?.slow_kpa)).toBeLessThan(Number(slow?.fast_kpa));
  });

  it("one cock of many stops only its own row's water", () => {
    const rise = (pattern: "cock-a-row" | "valve-a-set") =>
      Number(of(watered(createWateringJob({ main_m: 200, sets: { pattern } })), "pipe", "surge")[0]?.surge?.slow_kpa);
    expect(rise("cock-a-row")).toBeLessThan(rise("valve-a-set") / 3);
  });
});

it("what pipe stands falls with the temperature of the water; a size of one's own is not judged", () => {
  const cold = watered(createWateringJob({ sets: { pattern: "cock-a-row" } }));
  const warm = watered(createWateringJob({ sets: { pattern: "cock-a-row" }, water: { temperature_c: 40 } }));
  expect(Number(warm.highest[0]?.most_kpa)).toBeLessThan(0.7 * Number(cold.highest[0]?.most_kpa));
  const job = createWateringJob({ sets: { pattern: "cock-a-row", sizing: "as-set" } });
  const own = watered({ ...job, pipe: { ...job.pipe, size: "my-own" } });
  expect(own.pipes.map(({ pipe }) => pipe.size)).toContain("my-own");
  expect(own.highest.filter(({ what }) => what === "pipe")).toEqual([]);
});

it("without water or a route nothing is told", () => {
  expect(waterRows(createWateringJob({ isWithoutLine: true }))?.highest).toEqual([]);
  expect(waterRows(createWateringJob({ water: { kind: "unknown" } }))?.highest).toEqual([]);
});

it("every highest pressure, rating and velocity is what its account reckons from what it tells", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...valvePatterns),
      fc.integer({ min: 1, max: 9 }),
      fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      fc.option(fc.constant(110)),
      (pattern, rows, lineRise_ratio, regulator_kpa) => {
        const water = { tankLevel_m: 25, temperature_c: 30 };
        const job = createWateringJob({ rows, lineRise_ratio, water, sets: { pattern, regulator_kpa } });
        const watering = watered(job);
        for (const each of watering.highest) {
          expect(highestAccount(each).value).toBeCloseTo(each.pressure_kpa, 9);
          if (each.what === "pipe")
            expect(ratingAccount(job, watering, each.pipe)?.value).toBeCloseTo(each.most_kpa, 9);
        }
        for (const [set, { nodes }] of watering.sets.entries()) {
          for (const [node, velocity_mps] of nodes.velocity_mps.entries()) {
            const told = velocityAccount(watering, set, node);
            if (told !== null) expect(told.value).toBeCloseTo(velocity_mps, 9);
          }
        }
      },
    ),
    { seed: 3, numRuns: 30 },
  );
});
