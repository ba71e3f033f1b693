import { describe, expect, test } from "vitest";
import {
  cupAccount,
  patternPipeAccount,
  patternPriceAccount,
  pipeLengthAccount,
  valvesAccount,
} from "../../../src/core/drip/pipe-accounts.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const watering = waterRows(createWateringJob({ rows: 6, sets: { count: 2 } }));
if (watering === null) throw new Error("nothing was worked out");
const { pipes, patterns, firstRun } = watering;

describe("how numbers about pipes came about", () => {
  test("the length of all pipe is that of its runs", () => {
    const sum_m = pipes.reduce((sum, { length_m }) => sum + length_m, 0);
    expect(sum_m).toBeGreaterThan(10);
    expect(pipeLengthAccount(pipes).value).toBeCloseTo(sum_m, 9);
  });

  test("a pattern's valves are its rows or its sets", () => {
    expect(patterns.map((each) => [each.pattern, valvesAccount(each).value])).toEqual([
      ["cock-a-row", 6],
      ["valve-a-set", 2],
      ["valves-at-source", 2],
    ]);
  });

  test("a pattern's pipe is told with what lies where", () => {
    for (const each of patterns) {
      const told = patternPipeAccount(each);
      expect(told.value).toBe(each.pipe_m);
      expect(text(told.formula, "metric")).toMatch(/line/);
    }
  });

  test("a pattern without prices says why it has none", () => {
    const [first] = patterns;
    if (first === undefined) throw new Error("no pattern was compared");
    expect(first.price).toBeNull();
    expect(text(patternPriceAccount(first).formula, "metric")).toMatch(/^Not priced/);
    expect(text(patternPriceAccount({ ...first, price: 12 }).formula, "metric")).toMatch(/^Pipe by the metre/);
  });

  test("a cup catches its emitter's flow for three minutes", () => {
    const cups = firstRun.flatMap((check) => check.cups);
    expect(cups.length).toBeGreaterThan(2);
    for (const { emitter, volume_l } of cups) {
      expect(cupAccount(watering, emitter).value).toBeCloseTo(volume_l, 9);
      expect(volume_l).toBeGreaterThan(0.05);
    }
  });
});
