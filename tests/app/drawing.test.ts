import { describe, expect, test } from "vitest";
import { gridSegments, gridStep_m } from "../../src/app/map/grid.ts";
import { bearingScale, lockedStretches, nearestPoint } from "../../src/app/strip/bearing-scale.ts";
import { rowWindow } from "../../src/app/strip/row-window.ts";
import type { SweepPoint } from "../../src/core/rows/rows.ts";

function createSweep(lengths: readonly number[], locked: readonly number[] = []): SweepPoint[] {
  return lengths.map((rowLength_m, i) => ({
    bearing_deg: (i * 180) / lengths.length,
    rowLength_m,
    rows: 10,
    shortRows: 0,
    meanLength_m: rowLength_m / 10,
    plantedShare: 0.5,
    score_m: rowLength_m - 120,
    locked: locked.includes(i),
  }));
}

describe("the row list's window", () => {
  test("a long list has only the lines in view and a few more", () => {
    expect(rowWindow(2000, 30, 3000, 270)).toEqual({ first: 96, past: 113 });
  });
  test("a short list is there whole, at any scroll", () => {
    expect(rowWindow(5, 30, 0, 270)).toEqual({ first: 0, past: 5 });
    expect(rowWindow(0, 30, 0, 270)).toEqual({ first: 0, past: 0 });
    expect(rowWindow(3, 30, 9000, 270)).toEqual({ first: 3, past: 3 });
  });
});

describe("the grid", () => {
  test.each([
    [0.1, 10],
    [0.15, 20],
    [0.5, 50],
    [1.43, 200],
    [0.01, 1],
  ])("%d m a pixel gives lines every %d m", (metresPerPixel, step_m) => {
    expect(gridStep_m(metresPerPixel)).toBe(step_m);
  });
  test("lines stand at whole multiples within the box", () => {
    const box = { west_m: -25, south_m: -5, east_m: 25, north_m: 15 };
    const segments = gridSegments(box, 10);
    const eastings = new Set(segments.filter(([x1, , x2]) => x1 === x2).map(([x1]) => x1));
    const northings = new Set(segments.filter(([, y1, , y2]) => y1 === y2).map(([, y1]) => y1));
    expect([...eastings]).toEqual([-20, -10, 0, 10, 20]);
    expect([...northings]).toEqual([0, 10]);
    const length_m = segments.reduce((sum, [x1, y1, x2, y2]) => sum + Math.hypot(x2 - x1, y2 - y1), 0);
    expect(length_m).toBeCloseTo(5 * 20 + 2 * 50, 9);
  });
});

describe("the bearing chart", () => {
  test("longer rows stand higher and the scale takes in every point", () => {
    const points = createSweep([1000, 1200, 900, 1100]);
    const { x, y } = bearingScale(points);
    expect(y(1200)).toBeLessThan(y(900));
    expect(x(180)).toBeGreaterThan(x(135));
    for (const { rowLength_m, score_m } of points) {
      expect(y(rowLength_m)).toBeGreaterThanOrEqual(20);
      expect(y(score_m)).toBeLessThanOrEqual(152);
    }
  });
  test("a score below nothing stays above the axis", () => {
    // Ten short rows: 120 m of row ends cost more than the 40 m they hold.
    const { y } = bearingScale(createSweep([40, 300, 90]));
    expect(y(40 - 120)).toBeLessThanOrEqual(152);
  });
  test("neighbouring locked bearings are one stretch", () => {
    const points = createSweep(Array(18).fill(100), [2, 3, 4, 9]);
    expect(lockedStretches(points)).toEqual([
      { from_deg: 20, to_deg: 50 },
      { from_deg: 90, to_deg: 100 },
    ]);
  });
  test("the nearest point is found around 180 degrees", () => {
    const points = createSweep(Array(18).fill(100));
    expect(nearestPoint(points, 178)?.bearing_deg).toBe(0);
    expect(nearestPoint(points, 44)?.bearing_deg).toBe(40);
    expect(nearestPoint([], 44)).toBeNull();
  });
});
