import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaults } from "../../../src/core/project/defaults.ts";
import { soilClasses, type TrenchSettings, trenchTools } from "../../../src/core/project/project.ts";
import { dayOf_m, earthOf, type PipesDug } from "../../../src/core/trench/earth.ts";
import { prism_m3, sectionArea_m2 } from "../../../src/core/trench/section.ts";
import type { Profile } from "../../../src/core/trench/trench.ts";
import { trenchWidth_m } from "../../../src/core/trench/trench-width.ts";
import { createTrench } from "../../support/create-trench.ts";

const near = 1e-9;
const settingsOf = (change: Partial<TrenchSettings> = {}): TrenchSettings => ({ ...defaults.metric.trench, ...change });

/** So many metres of the usual pipe. */
function pipes(length_m: number): PipesDug {
  const { pipe } = settingsOf();
  return { pipes: [{ pipe, length_m }], abreast_mm: [pipe.outside_mm] };
}

/** A profile of given depths at given stations. */
function deep(...places: readonly (readonly [station_m: number, depth_m: number])[]): Profile {
  const none = new Float64Array(places.length);
  return {
    station_m: Float64Array.from(places, ([station_m]) => station_m),
    slopeStation_m: Float64Array.from(places, ([station_m]) => station_m),
    xy: Float64Array.from(places.flatMap(([station_m]) => [station_m, 0])),
    ground_m: none,
    pipe_m: none,
    bottom_m: Float64Array.from(places, ([, depth_m]) => -depth_m),
    depth_m: Float64Array.from(places, ([, depth_m]) => depth_m),
    row: new Int32Array(places.length).fill(-1),
    point: new Int32Array(places.length).fill(-1),
  };
}

describe("volumes", () => {
  test("a trench with upright sides that deepens evenly is its mean depth, a wedge is half a box", () => {
    expect(prism_m3(0.3, 0.5, 0.9, 0, 10)).toBeCloseTo(0.3 * 0.7 * 10, 12);
    expect(prism_m3(0.3, 0, 0.8, 0, 10)).toBeCloseTo((0.3 * 0.8 * 10) / 2, 12);
  });

  test("with sloping sides it is the prismoidal formula, which is exact for it, and less than the average of the end areas", () => {
    fc.assert(
      fc.property(
        fc.tuple(...[0.1, 0, 0, 0, 0.1].map((min) => fc.double({ min, max: 3, noNaN: true }))),
        ([width_m = 0, from_m = 0, to_m = 0, slope = 0, length_m = 0]) => {
          const area = (depth_m: number) => sectionArea_m2(width_m, depth_m, slope);
          // Prismoidal formula: L (A1 + 4 Am + A2) / 6, Am in the middle (surveying textbooks; Simpson's rule, exact for a quadratic).
          const expected = (length_m * (area(from_m) + 4 * area((from_m + to_m) / 2) + area(to_m))) / 6;
          const got = prism_m3(width_m, from_m, to_m, slope, length_m);
          expect(Math.abs(got - expected)).toBeLessThan(1e-9 * Math.max(1, expected));
          expect(got).toBeLessThanOrEqual((length_m * (area(from_m) + area(to_m))) / 2 + near);
        },
      ),
      { seed: 75, numRuns: 500 },
    );
  });

  test("the real depths count, station by station, and the leads at the depth of their tee", () => {
    const settings = settingsOf({ width_m: 0.2, sideSlope_ratio: 1 });
    const earth = earthOf([deep([0, 0.5], [10, 1], [30, 1])], [{ length_m: 2.5, depth_m: 1 }], pipes(30), settings);
    const expected = prism_m3(0.2, 0.5, 1, 1, 10) + 20 * 1.2 * 1 + 2.5 * 1.2 * 1;
    expect(earth.cut_m3).toBeCloseTo(expected, 9);
    expect(earth.dug_m).toBe(32.5);
    expect(earth.deepest_m).toBe(1);
    expect(earth.deepestAt).toEqual([10, 0]);
    expect(earth.topWidth_m).toBeCloseTo(2.2, 12);
  });

  test("loose is more than bank, bank more than pipe and bedding, and what is cut is what goes back and what is over", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...trenchTools),
        fc.constantFrom(...soilClasses),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (tool, soil, bedding_m, sideSlope_ratio) => {
          const { earth } = createTrench({ trench: { tool, soil, bedding_m, sideSlope_ratio } }).dug;
          expect(earth.loose_m3).toBeGreaterThanOrEqual(earth.cut_m3);
          expect(earth.cut_m3).toBeGreaterThanOrEqual(earth.pipe_m3 + earth.bedding_m3);
          expect(earth.backfill_m3 + earth.pipe_m3 + earth.bedding_m3).toBeCloseTo(earth.cut_m3, 9);
          expect(earth.topWidth_m).toBeGreaterThanOrEqual(earth.width_m);
          expect(earth.hours_h[0]).toBeLessThanOrEqual(earth.hours_h[1]);
          expect(earth.daily_m[0]).toBeLessThanOrEqual(earth.daily_m[1]);
          expect(earth.days[0]).toBeLessThanOrEqual(earth.days[1]);
        },
      ),
      { seed: 76, numRuns: 30 },
    );
  });
});

describe("width", () => {
  test.each([
    ["trencher", 0.15],
    ["hand", 0.35],
    ["excavator", 0.35],
  ] as const)("by %s for 50 mm pipe it is %d m", (tool, width_m) => {
    expect(trenchWidth_m(settingsOf({ tool }))).toBeCloseTo(width_m, 12);
  });

  test("thick pipe widens what a trencher digs; a stated width counts", () => {
    const pipe = { ...settingsOf().pipe, outside_mm: 160 };
    expect(trenchWidth_m(settingsOf({ pipe }))).toBeCloseTo(0.21, 12);
    expect(trenchWidth_m(settingsOf({ pipe, width_m: 0.1 }))).toBe(0.1);
  });
});

describe("time", () => {
  const hundred = [deep([0, 0.5], [100, 0.5])];

  test("a chain trencher digs 30 to 100 m an hour, each person lays 20 to 40 m (handbook, section 9: common practice)", () => {
    const earth = earthOf(hundred, [], pipes(100), settingsOf({ people: 2, width_m: 0.15 }));
    expect(earth.digging_h[0]).toBeCloseTo(1, 9);
    expect(earth.digging_h[1]).toBeCloseTo(100 / 30, 9);
    expect(earth.laying_h[0]).toBeCloseTo(1.25, 9);
    expect(earth.laying_h[1]).toBeCloseTo(2.5, 9);
  });

  test("by hand it goes by the earth: 0.15 m3 a metre in loam, two people, 0.4 to 0.8 m3 an hour each", () => {
    const earth = earthOf(hundred, [], pipes(100), settingsOf({ tool: "hand", people: 2, width_m: 0.3 }));
    expect(earth.digging_h[0]).toBeCloseTo(15 / 1.6, 9);
    expect(earth.digging_h[1]).toBeCloseTo(15 / 0.8, 9);
  });

  test("a stated pace counts", () => {
    const earth = earthOf(hundred, [], pipes(100), settingsOf({ dugPerHour_m: [10, 20] }));
    expect(earth.digging_h).toEqual([5, 10]);
  });

  test("a day's length is dug, laid and half filled in the hours less one for the test", () => {
    // 100 m take 10 h: 7 of 8 h make 70 m; of a day of an hour half goes to the test.
    expect(dayOf_m(100, 10, 8)).toBeCloseTo(70, 9);
    expect(dayOf_m(100, 10, 1)).toBeCloseTo(5, 9);
    expect(dayOf_m(100, 1, 8)).toBe(100);
    const earth = earthOf(hundred, [], pipes(100), settingsOf({ tool: "hand", people: 1, width_m: 0.3 }));
    const slow_h = earth.digging_h[1] + earth.laying_h[1] + earth.filling_h[1] / 2;
    expect(earth.daily_m[0]).toBeCloseTo(700 / slow_h, 9);
    expect(earth.days[1]).toBe(Math.ceil(100 / earth.daily_m[0]));
  });

  test("no line takes no time", () => {
    const earth = earthOf([], [], pipes(0), settingsOf());
    expect(earth).toMatchObject({ dug_m: 0, cut_m3: 0, hours_h: [0, 0], days: [0, 0], heapHeight_m: 0 });
  });
});
