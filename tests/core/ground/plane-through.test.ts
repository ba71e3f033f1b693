import { describe, expect, test } from "vitest";
import { elevationOf, heightReader } from "../../../src/core/ground/elevation.ts";
import { planeThrough } from "../../../src/core/ground/plane-through.ts";
import { text } from "../../../src/core/units.ts";
import { at, testFrame } from "../../support/create-project.ts";

type Spot = readonly [x_m: number, y_m: number, height_m: number];

const through = (...spots: readonly Spot[]) =>
  planeThrough(
    Float64Array.from(spots.flatMap(([x, y]) => [x, y] as const)),
    Float64Array.from(spots, ([, , z]) => z),
  );
const groundOf = (...spots: readonly Spot[]) =>
  elevationOf(
    spots.map(([x, y, height_m], i) => ({ key: `spot-${i}`, name: null, at: at([x, y]), height_m })),
    testFrame,
    [],
    "plane",
  );

describe("one plane through spot heights", () => {
  test("three heights are met exactly, and the plane goes on outside them", () => {
    const { elevation, findings } = groundOf([0, 0, 100], [100, 0, 108], [0, 100, 95]);
    const heightAt = heightReader(elevation);
    expect(Number(heightAt(50, 20))).toBeCloseTo(100 + 4 - 1, 6);
    expect(Number(heightAt(-200, 300))).toBeCloseTo(100 - 16 - 15, 5);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["ground/one-plane", "note"]]);
    // The fall line of 8 % east and 5 % south is 9.43 % steep.
    expect(text(findings[0]?.message ?? [], "metric")).toBe(
      "The ground is taken as one plane through 3 spot heights, 9.43 % steep.",
    );
  });

  test("a textbook fit by least squares: z = x + 2 y with one corner 1 m too high", () => {
    // Four corners of a square, one off by 1: residuals are a quarter each, slopes move by an eighth of it over the half side.
    const plane = through([-1, -1, -3], [1, -1, -1], [-1, 1, 1], [1, 1, 4]);
    expect(plane?.ground.east_ratio).toBeCloseTo(1.25, 12);
    expect(plane?.ground.north_ratio).toBeCloseTo(2.25, 12);
    expect(plane?.ground.origin_m).toBeCloseTo(0.25, 12);
    expect(plane?.miss_m).toBeCloseTo(0.25, 12);
  });

  test("far from the origin it is the same plane", () => {
    const plane = through([5000, 7000, 100], [5040, 7000, 102], [5000, 7030, 97], [5040, 7030, 99]);
    expect(plane?.ground.east_ratio).toBeCloseTo(0.05, 9);
    expect(plane?.ground.north_ratio).toBeCloseTo(-0.1, 9);
    expect(plane?.miss_m).toBeLessThan(1e-9);
  });

  test("a miss of more than half a metre is warned of", () => {
    const { findings } = groundOf([0, 0, 100], [100, 0, 100], [0, 100, 100], [100, 100, 104]);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["ground/one-plane", "warning"]]);
    expect(text(findings[0]?.message ?? [], "metric")).toContain("misses the one that fits worst by 1 m");
  });

  test("heights in one line, or two of them, make no plane", () => {
    for (const spots of [
      [
        [0, 0, 1],
        [50, 10, 2],
        [100, 20, 3],
      ],
      [
        [0, 0, 1],
        [50, 10, 2],
      ],
    ] as const) {
      const { elevation, findings } = groundOf(...spots);
      expect(elevation).toEqual({ kind: "flat" });
      expect(findings.map(({ code }) => code)).toEqual(["ground/heights-too-few"]);
    }
  });
});
