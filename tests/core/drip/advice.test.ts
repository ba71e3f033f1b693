import { describe, expect, test } from "vitest";
import { type Advice, adviceOf } from "../../../src/core/drip/advice.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { Monthly } from "../../../src/core/project/water-settings.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

/** Invented: a dry summer. */
const reference_mmpd: Monthly = [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1];

function advice(sketch: WateringSketch): readonly Advice[] {
  const job = createWateringJob(sketch);
  return adviceOf(job, waterRows(job), waterRows);
}

function named(all: readonly Advice[], id: string): Advice {
  const found = all.find((each) => each.id === id);
  if (found === undefined) throw new Error(`${id} is not among ${all.map((each) => each.id).join(", ")}`);
  return found;
}

/** 8 m of water in a tank, for rows that want 10. */
const lowTank: WateringSketch = { water: { tankLevel_m: 8 } };
/** Water enough, but five hours a day for what takes twelve. */
const fewHours: WateringSketch = { season: { reference_mmpd }, water: { hoursADay_h: 5 } };
/** 50 L/h for 80 emitters of 2 L/h. */
const smallTown: WateringSketch = {
  season: { reference_mmpd, usualShare_ratio: 0.3, peakShare_ratio: 0.45 },
  water: { kind: "town", staticPressure_kpa: 300, limitFlow_lph: 60, hoursADay_h: 6 },
};

test("where there is enough nothing is advised, nor while the water is not known or no line is laid", () => {
  expect(advice({})).toEqual([]);
  expect(advice({ water: { kind: "unknown" } })).toEqual([]);
  expect(advice({ ...lowTank, isWithoutLine: true })).toEqual([]);
});

test("what is advised comes in the order of the trouble it takes", () => {
  const order = [
    "longer-hours",
    "more-sets",
    "larger-emitters",
    "smaller-emitters",
    "higher-regulators",
    "larger-pipe",
    "wider-hose",
    "compensating-emitters",
    "pump",
    "tank-and-pump",
  ];
  for (const sketch of [lowTank, fewHours, smallTown]) {
    const places = advice(sketch).map(({ id }) => order.indexOf(id));
    expect(places.length).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  }
});

test("each piece of advice leaves less missing than before, and says when nothing is", () => {
  for (const sketch of [lowTank, fewHours, smallTown]) {
    for (const { before, after, isEnough, id } of advice(sketch)) {
      const sum = ({ head_m, usual_h, peak_h, evenness_ratio, day_l }: typeof before.missing) =>
        head_m + usual_h + peak_h + evenness_ratio + day_l;
      expect(sum(after.missing), id).toBeLessThan(sum(before.missing));
      expect(isEnough, id).toBe(sum(after.missing) === 0);
    }
  }
});

test("too few hours are first answered by more of them, as whole as people count them", () => {
  const [first] = advice(fewHours);
  expect(first?.id).toBe("longer-hours");
  expect(first?.edits).toEqual([["water.hoursADay", 12]]);
  expect(first?.before.peak_h).toBeCloseTo(11.95, 1);
  expect(first?.isEnough).toBe(true);
  expect(text(first?.name ?? [], "metric")).toBe("Water 12 h a day instead of 5 h");
});

test("more hours are not enough where too little comes back in a day", () => {
  const [first] = advice({ ...fewHours, water: { hoursADay_h: 5, recovery_lph: 20 } });
  expect(first?.id).toBe("longer-hours");
  expect(first?.isEnough).toBe(false);
  expect(Number(first?.after.missing.day_l)).toBeGreaterThan(0);
});

test("where only time is missing larger emitters take fewer hours, and a pump is not offered", () => {
  const all = advice(fewHours);
  const larger = named(all, "larger-emitters");
  expect(Number(larger.after.peak_h)).toBeLessThan(Number(larger.before.peak_h));
  expect(all.map(({ id }) => id)).not.toContain("pump");
});

test("too little pressure is answered by compensating emitters that do with less, or by a pump of the size it takes", () => {
  const all = advice(lowTank);
  const compensating = named(all, "compensating-emitters");
  expect(compensating.isEnough).toBe(true);
  expect(compensating.edits).toContainEqual(["drip.emitterKind", "compensating"]);
  const pump = named(all, "pump");
  expect(pump.isEnough).toBe(true);
  expect(pump.after.spare_m).toBeGreaterThan(0);
  expect(text(pump.name, "metric")).toMatch(/^A pump that gives 180 L\/h at \d+ kPa, for 1 set$/);
  expect(text(pump.note ?? [], "metric")).toContain("licensed");
});

test("a source too small for the hours, but not for the day, is answered by a tank that fills all day", () => {
  const tank = named(advice(smallTown), "tank-and-pump");
  expect(tank.isEnough).toBe(true);
  const [kind, stored, source] = ["water.kind", "water.stored", "water.recovery"].map(
    (path) => tank.edits.find(([of]) => of === path)?.[1],
  );
  expect(kind).toBe("pump");
  expect(Number(source)).toBe(60);
  const job = createWateringJob(smallTown);
  const peak_l = Number(waterRows(job)?.season?.[0]?.peak.peak_lpd);
  // It holds what is given in a day but for what runs in meanwhile.
  expect(Number(stored)).toBeLessThan(peak_l);
  expect(Number(stored) + 60 * Number(tank.after.peak_h)).toBeGreaterThan(0.95 * peak_l);
});

test("a source too small for the whole day is not answered by a tank", () => {
  const ids = advice({ ...smallTown, water: { ...smallTown.water, limitFlow_lph: 30 } }).map(({ id }) => id);
  expect(ids).not.toContain("tank-and-pump");
  expect(ids).not.toContain("pump");
});

test("sets that are set too few are answered by as many as the water feeds", () => {
  const more = named(
    advice({ water: { kind: "town", staticPressure_kpa: 300, limitFlow_lph: 60 }, sets: { count: 1 } }),
    "more-sets",
  );
  expect(more.edits).toEqual([["sets.count", null]]);
  expect(more.isEnough).toBe(true);
  expect(more.after.sets).toBeGreaterThan(1);
  expect(text(more.name, "metric")).toBe(`Water in ${more.after.sets} sets instead of 1`);
});

test("regulators that let too little through are answered by higher ones", () => {
  const higher = named(advice({ sets: { regulator_kpa: 60 } }), "higher-regulators");
  expect(higher.isEnough).toBe(true);
  expect(Number(higher.edits[0]?.[1])).toBeGreaterThan(98);
});

test("a pipe that is set too narrow is answered by pipes that are chosen", () => {
  const sketch: WateringSketch = { rows: 8, vines: 40, main_m: 300, water: { tankLevel_m: 16 } };
  const job = createWateringJob({ ...sketch, sets: { sizing: "as-set", count: 1 } });
  const narrow = { ...job, pipe: { ...job.pipe, inside_mm: 15, outside_mm: 21, size: "narrow" } };
  const larger = named(adviceOf(narrow, waterRows(narrow), waterRows), "larger-pipe");
  expect(larger.edits).toEqual([["sets.sizing", "chosen"]]);
  expect(larger.after.missing.head_m).toBeLessThan(larger.before.missing.head_m);
});

describe("smaller emitters", () => {
  const long: WateringSketch = {
    vines: 150,
    rise_ratio: 0.01,
    season: { reference_mmpd, usualShare_ratio: 0.2, peakShare_ratio: 0.3 },
    water: { tankLevel_m: 22 },
  };

  test("come with a finer filter when their passages are narrow", () => {
    const smaller = named(advice(long), "smaller-emitters");
    expect(smaller.after.evenness_ratio).toBeGreaterThan(smaller.before.evenness_ratio);
    expect(text(smaller.note ?? [], "metric")).toContain("finer filter");
  });

  test("of blocks that differ are set block by block", () => {
    const sketch = { ...long, rows: 2, blocks: 2, dripOfOthers: { emitterFlow_lph: 1.6 } };
    const smaller = named(advice(sketch), "smaller-emitters");
    expect(smaller.edits.map(([path]) => path)).toEqual(["blocks.1.drip.emitterFlow", "blocks.2.drip.emitterFlow"]);
  });
});
