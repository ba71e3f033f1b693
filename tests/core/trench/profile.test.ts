import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lineTree } from "../../../src/core/trench/line-tree.ts";
import { type Layers, profileOf } from "../../../src/core/trench/profile.ts";
import { withFall } from "../../../src/core/trench/with-fall.ts";
import { createRoute } from "../../support/create-route.ts";

const layers: Layers = { cover_m: 0.6, outside_m: 0.06, bedding_m: 0.1 };
const depth_m = 0.76;
const exact_m = 1e-9;
/** Chords of 1 m under a curve that turns slowly. */
const chords_m = 0.01;
const steps = { stationStep_m: 5, groundStep_m: 1 };

const straight = createRoute([
  { x: 0, y: 0 },
  { x: 100, y: 0 },
]);
const main = { name: "main", points: [0, 1] };

/** Length of y = a x2 from 0 to x, in closed form. */
function parabolaLength_m(a: number, x: number): number {
  const slope = 2 * a * x;
  return (slope * Math.sqrt(1 + slope ** 2) + Math.asinh(slope)) / (4 * a);
}

describe("a profile over ground with a known equation", () => {
  test("a parabola: heights are its own, lengths are its arc", () => {
    const a = 0.002;
    const { profile, isKnown } = profileOf(straight, main, (x) => a * x ** 2, layers, steps);
    expect(isKnown).toBe(true);
    expect([...profile.station_m]).toEqual(Array.from({ length: 21 }, (_, i) => 5 * i));
    profile.station_m.forEach((station_m, i) => {
      const height_m = a * station_m ** 2;
      expect(Math.abs(Number(profile.ground_m[i]) - height_m)).toBeLessThan(exact_m);
      expect(Math.abs(Number(profile.bottom_m[i]) - (height_m - depth_m))).toBeLessThan(exact_m);
      expect(Math.abs(Number(profile.pipe_m[i]) - (height_m - 0.63))).toBeLessThan(exact_m);
      expect(Math.abs(Number(profile.slopeStation_m[i]) - parabolaLength_m(a, station_m))).toBeLessThan(chords_m);
    });
  });

  test("a sine: read 1 m apart its length is the arc, read a whole wave apart it is level", () => {
    const [height_m, wave_m] = [2, 20];
    const sine = (x: number) => height_m * Math.sin((2 * Math.PI * x) / wave_m);
    // Arc length by the midpoint rule on the derivative, a thousand pieces a metre.
    const k = (2 * Math.PI) / wave_m;
    const pieces = 100_000;
    const arc_m = Array.from({ length: pieces }, (_, i) =>
      Math.hypot(1, height_m * k * Math.cos(k * ((i + 0.5) * (100 / pieces)))),
    ).reduce((sum, each) => sum + each * (100 / pieces), 0);
    const fine = profileOf(straight, main, sine, layers, steps).profile.slopeStation_m.at(-1);
    expect(Math.abs(Number(fine) - arc_m) / arc_m).toBeLessThan(2e-3);
    expect(Number(fine)).toBeLessThan(arc_m);
    const coarse = profileOf(straight, main, sine, layers, { ...steps, groundStep_m: 20 }).profile.slopeStation_m;
    expect(coarse.at(-1)).toBeCloseTo(100, 9);
  });

  test("a slope of 15 %: 91.44 m are 92.462978 m along the ground (calculation handbook, check 2-39)", () => {
    const route = createRoute([
      { x: 0, y: 0 },
      { x: 91.44, y: 0 },
    ]);
    const { profile } = profileOf(route, main, (x) => 0.15 * x, layers, { stationStep_m: 7, groundStep_m: 7.3 });
    expect(Math.abs(Number(profile.slopeStation_m.at(-1)) - 92.462978)).toBeLessThan(1e-6);
  });
});

test("there is a station at every point of the route and at every step, none twice", () => {
  const route = createRoute([
    { x: 0, y: 0 },
    { x: 3, y: 4, row: 0 },
    { x: 3, y: 11, row: 1 },
    { x: 3, y: 11, row: 2 },
  ]);
  const { profile } = profileOf(route, { name: "main", points: [0, 1, 2, 3] }, () => 0, layers, steps);
  expect([...profile.station_m]).toEqual([0, 5, 10, 12, 12]);
  expect([...profile.point]).toEqual([0, 1, -1, 2, 3]);
  expect([...profile.row]).toEqual([-1, 0, -1, 1, 2]);
  expect([...profile.xy]).toEqual([0, 0, 3, 4, 3, 9, 3, 11, 3, 11]);
});

test("where the ground is not known heights are not, and the depth is that of the cover", () => {
  const { profile, isKnown } = profileOf(straight, main, (x) => (x > 40 && x < 70 ? null : 12), layers, steps);
  expect(isKnown).toBe(false);
  profile.station_m.forEach((station_m, i) => {
    const isGap = station_m > 40 && station_m < 70;
    expect(Number.isNaN(Number(profile.ground_m[i]))).toBe(isGap);
    expect(Number.isNaN(Number(profile.bottom_m[i]))).toBe(isGap);
    expect(Number(profile.depth_m[i])).toBeCloseTo(depth_m, 12);
  });
  expect(profile.slopeStation_m.at(-1)).toBeCloseTo(100, 9);
});

test("ground of height nothing is known ground", () => {
  const { profile, isKnown } = profileOf(straight, main, () => 0, layers, steps);
  expect(isKnown).toBe(true);
  expect([...profile.ground_m].every((height_m) => height_m === 0)).toBe(true);
});

describe("a least fall", () => {
  const hill = (x: number, y: number) => 5 - 0.001 * (x - 30) ** 2 + 0.01 * y;
  const route = createRoute([
    { x: 0, y: 0 },
    { x: 50, y: 0 },
    { x: 100, y: 0 },
    { x: 50, y: 60, upstream: 1 },
  ]);
  const branches = [
    { name: "main", points: [0, 1, 3] },
    { name: "a", points: [1, 2] },
  ];
  const level = branches.map((branch) => profileOf(route, branch, hill, layers, steps).profile);

  test("falls from everywhere to the lowest place, and nowhere above constant cover", () => {
    const grade = 0.004;
    const tree = lineTree(level);
    const fallen = withFall(level, tree, grade, layers);
    const far = fallen[1];
    if (far === undefined) throw new Error("no branch");
    for (const profile of fallen) {
      profile.depth_m.forEach((each_m, i) => {
        expect(each_m).toBeGreaterThanOrEqual(depth_m - exact_m);
        expect(Number(profile.ground_m[i]) - Number(profile.bottom_m[i])).toBeCloseTo(each_m, 9);
      });
    }
    // The lowest ground is at (100, 0), the end of branch a: it keeps its cover, and the branch falls towards it all the way.
    expect(far.depth_m.at(-1)).toBeCloseTo(depth_m, 9);
    for (let i = 1; i < far.station_m.length; i++) {
      const run_m = Number(far.station_m[i]) - Number(far.station_m[i - 1]);
      expect(Number(far.bottom_m[i - 1]) - Number(far.bottom_m[i])).toBeGreaterThanOrEqual(grade * run_m - exact_m);
    }
    // Where branches meet they lie at one height.
    const meeting = fallen[0]?.point.indexOf(1) ?? -1;
    expect(fallen[0]?.bottom_m[meeting]).toBe(far.bottom_m[0]);
  });

  test("ground that falls more than is wished keeps its cover", () => {
    const slope = (x: number) => -0.05 * x;
    const only = [profileOf(straight, main, slope, layers, steps).profile];
    const [fallen] = withFall(only, lineTree(only), 0.002, layers);
    for (const each_m of fallen?.depth_m ?? []) expect(each_m).toBeCloseTo(depth_m, 9);
  });

  test("nothing is reckoned across unknown ground", () => {
    const only = [profileOf(straight, main, (x) => (x === 50 ? null : 0.01 * x), layers, steps).profile];
    const [fallen] = withFall(only, lineTree(only), 0.02, layers);
    expect(Number.isNaN(Number(fallen?.bottom_m[10]))).toBe(true);
    expect(fallen?.depth_m[10]).toBeCloseTo(depth_m, 9);
    // Ground rises by 1 % and the bottom falls back by 2 %: 45 m of each part make 0.45 m, down to its own lowest place.
    expect(fallen?.depth_m[9]).toBeCloseTo(depth_m, 9);
    expect(fallen?.depth_m[0]).toBeCloseTo(depth_m + 0.45, 9);
    expect(fallen?.depth_m[20]).toBeCloseTo(depth_m, 9);
    expect(fallen?.depth_m[11]).toBeCloseTo(depth_m + 0.45, 9);
  });
});

test("whatever the ground, it is no shorter than the plan and nowhere is there less than the cover", () => {
  const waves = fc.array(
    fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.01, max: 0.5, noNaN: true })),
    {
      maxLength: 4,
    },
  );
  fc.assert(
    fc.property(waves, fc.double({ min: 0, max: 0.05, noNaN: true }), (parts, grade) => {
      const ground = (x: number) => parts.reduce((sum_m, [high_m, k]) => sum_m + high_m * Math.sin(k * x), 0);
      const { profile } = profileOf(straight, main, ground, layers, { stationStep_m: 4, groundStep_m: 7 });
      expect(Number(profile.slopeStation_m.at(-1))).toBeGreaterThanOrEqual(100 - exact_m);
      for (let i = 1; i < profile.station_m.length; i++) {
        const run_m = Number(profile.station_m[i]) - Number(profile.station_m[i - 1]);
        const along_m = Number(profile.slopeStation_m[i]) - Number(profile.slopeStation_m[i - 1]);
        expect(along_m).toBeGreaterThanOrEqual(run_m - exact_m);
      }
      const [fallen] = withFall([profile], lineTree([profile]), grade, layers);
      for (const each_m of fallen?.depth_m ?? []) expect(each_m).toBeGreaterThanOrEqual(depth_m - exact_m);
    }),
    { seed: 71, numRuns: 200 },
  );
});
