import { describe, expect, it } from "vitest";
import { alongSlope_m, slopeParts } from "../../src/core/plane/slope.ts";
import { type Source, titled } from "./source.ts";

const geometry: Source = { computed: "geometry" };
const tolerance_m = 1e-5;

/** Metres more along the ground than in plan, for 100 m. */
const slopes = [
  { id: "8.4-1", slope_ratio: 0.02, extra_m: 0.019998 },
  { id: "8.4-2", slope_ratio: 0.05, extra_m: 0.124922 },
  { id: "8.4-3", slope_ratio: 0.1, extra_m: 0.498756 },
  { id: "8.4-4", slope_ratio: 0.15, extra_m: 1.11874 },
  { id: "8.4-5", slope_ratio: 0.2, extra_m: 1.98039 },
  { id: "8.4-6", slope_ratio: 0.3, extra_m: 4.40307 },
] as const;

describe("8.4 length on a slope", () => {
  it.each(slopes.map((row) => [titled(row.id, geometry), row] as const))("%s", (_, { slope_ratio, extra_m }) => {
    expect(Math.abs(alongSlope_m(100, slope_ratio) - 100 - extra_m)).toBeLessThanOrEqual(tolerance_m);
    expect(alongSlope_m(100, -slope_ratio)).toBe(alongSlope_m(100, slope_ratio));
  });

  it(titled("8.4-7 vines spaced by tape at 15 % land 1.1 % short in plan", geometry), () => {
    expect(1 - 1 / alongSlope_m(1, 0.15)).toBeCloseTo(0.011, 3);
  });

  it(titled("8.4-8 a slope of 12 % whose fall line lies 30 degrees off the row", geometry), () => {
    const { along_ratio, across_ratio } = slopeParts(0.12, 30);
    expect(along_ratio).toBeCloseTo(0.103923, 7);
    expect(across_ratio).toBeCloseTo(0.06, 7);
  });

  it("the ground is never shorter than the plan", () => {
    for (let slope_ratio = -1; slope_ratio <= 1; slope_ratio += 0.05) {
      expect(alongSlope_m(250, slope_ratio)).toBeGreaterThanOrEqual(250);
    }
  });
});
