import { describe, expect, test } from "vitest";
import { contourInterval_m, contours } from "../../../src/core/ground/contours.ts";
import type { Elevation } from "../../../src/core/ground/elevation.ts";
import { shade } from "../../../src/core/ground/shade.ts";

const box = { west_m: -100, south_m: -80, east_m: 100, north_m: 80 };
const plane = (east_ratio: number, north_ratio: number, origin_m = 100): Elevation => ({
  kind: "plane",
  origin_m,
  east_ratio,
  north_ratio,
});

/** A grid whose cells lie in the plane as they are: no turn, no scale. */
function ground(height: (x_m: number, y_m: number) => number, cell_m = 1): Elevation {
  const [columns, rows] = [200 / cell_m + 1, 160 / cell_m + 1];
  const height_m = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      height_m[row * columns + column] = height(column * cell_m - 100, 80 - row * cell_m);
    }
  }
  const per = 1 / cell_m;
  const cells = { column0: 100 * per, columnPerX: per, columnPerY: 0, row0: 80 * per, rowPerX: 0, rowPerY: -per };
  return { kind: "grid", columns, rows, cell_m, height_m, cells };
}

describe("contours", () => {
  test("those of a plane are straight, whole multiples of the interval, each one line across the box", () => {
    const lines = contours(plane(0.05, 0), box, 2);
    expect(lines.map(({ height_m }) => height_m)).toEqual([96, 98, 100, 102, 104]);
    expect(lines.filter(({ isMain }) => isMain).map(({ height_m }) => height_m)).toEqual([100]);
    for (const { height_m, xy } of lines) {
      const x = (height_m - 100) / 0.05;
      for (let i = 0; i < xy.length; i += 2) expect(Math.abs(Number(xy[i]) - x)).toBeLessThan(1e-6);
      expect([Math.min(...xy.filter((_, i) => i % 2)), Math.max(...xy.filter((_, i) => i % 2))]).toEqual([-80, 80]);
      // The high ground in the east lies to the left of a line that runs south.
      expect(Number(xy[1])).toBeGreaterThan(Number(xy.at(-1)));
    }
  });

  test("those of a paraboloid are closed circles at the radius that its height says", () => {
    const lines = contours(
      ground((x, y) => 100 - (x * x + y * y) / 200),
      box,
      10,
    );
    const closed = lines.filter(({ xy }) => xy[0] === xy.at(-2) && xy[1] === xy.at(-1));
    expect(closed.map(({ height_m }) => height_m)).toEqual([70, 80, 90]);
    for (const { height_m, xy } of closed) {
      const radius_m = Math.sqrt(200 * (100 - height_m));
      let [area, worst_m] = [0, 0];
      for (let i = 0; i + 3 < xy.length; i += 2) {
        const [x, y, nextX, nextY] = [Number(xy[i]), Number(xy[i + 1]), Number(xy[i + 2]), Number(xy[i + 3])];
        worst_m = Math.max(worst_m, Math.abs(Math.hypot(x, y) - radius_m));
        area += (x * nextY - nextX * y) / 2;
      }
      expect(worst_m).toBeLessThan(0.02);
      // Round a hilltop against the clock: the high ground is on the left.
      expect(area).toBeCloseTo(Math.PI * radius_m ** 2, -2);
    }
  });

  test("a saddle is cut once, so that no two lines cross", () => {
    for (const level of [-0.3, 0.3]) {
      const lines = contours(
        ground((x, y) => 10 * Math.sin(x / 7) * Math.sin(y / 7) + level, 1),
        box,
        50,
      );
      const ends = lines.flatMap(({ xy }) => (xy[0] === xy.at(-2) && xy[1] === xy.at(-1) ? [] : [xy]));
      // A line with ends begins and ends on the border of the box.
      for (const xy of ends) {
        for (const [x, y] of [
          [xy[0], xy[1]],
          [xy.at(-2), xy.at(-1)],
        ]) {
          const isOnBorder = Math.abs(Number(x)) > 99.99 || Math.abs(Math.abs(Number(y)) - 80) < 0.01;
          expect(isOnBorder).toBe(true);
        }
      }
      expect(lines.length).toBeGreaterThan(3);
    }
  });

  test("lines end where heights are not known, and there are none over flat ground", () => {
    const half = ground((x) => (x > 0 ? NaN : x));
    const lines = contours(half, box, 20);
    // At -80, -60, -40 and -20: at 0 one of the four heights around is missing.
    expect(lines.length).toBe(4);
    for (const { xy } of lines) expect(Math.max(...xy.filter((_, i) => i % 2 === 0))).toBeLessThanOrEqual(0);
    expect(contours({ kind: "flat" }, box, 1)).toEqual([]);
    expect(contours(plane(0, 0), { ...box, east_m: -100, north_m: -80 }, 1)).toEqual([]);
  });

  test("the interval draws from 5 to 15 lines, in round numbers of the unit", () => {
    for (const unit_m of [1, 0.3048]) {
      for (let rise_m = 0.3; rise_m < 500; rise_m *= 1.17) {
        const slope = plane(rise_m / 200, 0, 100.123);
        const interval_m = Number(contourInterval_m(slope, box, unit_m));
        const count = contours(slope, box, interval_m).length;
        expect(count).toBeGreaterThanOrEqual(4);
        expect(count).toBeLessThanOrEqual(15);
        const round = interval_m / unit_m / 10 ** Math.floor(Math.log10(interval_m / unit_m) + 1e-9);
        expect([1, 2, 5].some((each) => Math.abs(each - round) < 1e-6)).toBe(true);
      }
    }
    expect(contourInterval_m({ kind: "flat" }, box)).toBeNull();
    expect(contourInterval_m(plane(0, 0), box)).toBeNull();
  });
});

describe("hill shading", () => {
  const small = { west_m: 0, south_m: 0, east_m: 20, north_m: 10 };

  test("level ground is as light as the sine of 45 degrees, a slope of 45 degrees to the north-west as light as can be", () => {
    const level = shade(plane(0, 0), small, 5);
    expect([level.columns, level.rows, level.west_m, level.north_m]).toEqual([5, 3, 0, 10]);
    for (const light of level.light) expect(light).toBeCloseTo(255 * Math.SQRT1_2, 3);
    const facing = shade(plane(Math.SQRT1_2, -Math.SQRT1_2), small, 5);
    for (const light of facing.light) expect(light).toBeCloseTo(255, 3);
    const away = shade(plane(-Math.SQRT1_2, Math.SQRT1_2), small, 5);
    for (const light of away.light) expect(light).toBeCloseTo(0, 3);
  });

  test("it is what the usual formula by slope and aspect makes of it (from memory: cos z cos s + sin z sin s cos(azimuth - aspect))", () => {
    for (const [east, north] of [
      [0.1, 0.02],
      [-0.3, 0.2],
      [0.05, -0.4],
    ] as const) {
      const [slope, aspect] = [Math.atan(Math.hypot(east, north)), Math.atan2(-east, -north)];
      const zenith = Math.PI / 4;
      const light =
        Math.cos(zenith) * Math.cos(slope) +
        Math.sin(zenith) * Math.sin(slope) * Math.cos((315 * Math.PI) / 180 - aspect);
      expect(shade(plane(east, north), small, 5).light[7]).toBeCloseTo(255 * light, 3);
    }
  });

  test("cells beside ground that is not known are left out, and so is all of flat ground", () => {
    const { light, columns } = shade(
      ground((x) => (x > 10 ? NaN : x / 10)),
      { west_m: -20, south_m: -20, east_m: 20, north_m: 20 },
      2,
    );
    const row = Array.from(light.slice(0, columns), (each) => !Number.isNaN(each));
    expect(row.indexOf(false)).toBe(14);
    expect(row.lastIndexOf(true)).toBe(13);
    expect(shade({ kind: "flat" }, small, 5).light.every((each) => Number.isNaN(each))).toBe(true);
  });
});
