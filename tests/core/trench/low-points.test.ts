import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Route } from "../../../src/core/mainline/route.ts";
import { branchesOf } from "../../../src/core/trench/branches.ts";
import { lineTree, otherEnd } from "../../../src/core/trench/line-tree.ts";
import { lineHighs, lineLows, ponds, profilePoints } from "../../../src/core/trench/low-points.ts";
import { pipesOnLegs } from "../../../src/core/trench/pipes-on-legs.ts";
import { poolsOf } from "../../../src/core/trench/pools.ts";
import { profileOf } from "../../../src/core/trench/profile.ts";
import type { Profile, ProfilePoint } from "../../../src/core/trench/trench.ts";
import { createRoute } from "../../support/create-route.ts";

const layers = { cover_m: 0.5, outside_m: 0.06, bedding_m: 0 };
const steps = { stationStep_m: 5, groundStep_m: 5 };
const leastLow_m = 0.15;
/** A bore of 1000 mm2 holds a litre a metre. */
const inside_mm = Math.sqrt(4000 / Math.PI);
const pipe = { size: "own", outside_mm: 60, inside_mm, stick_m: 6, joint: "solvent" } as const;
const near = 1e-9;

function profilesOf(route: Route, heightAt: (x: number, y: number) => number | null) {
  return branchesOf(route).map((branch) => profileOf(route, branch, heightAt, layers, steps).profile);
}

/** Straight lines between places along x. */
function ground(...places: readonly (readonly [x_m: number, height_m: number])[]) {
  return (x: number): number => {
    const after = Math.max(
      1,
      places.findIndex(([at]) => at >= x),
    );
    const [[x0, h0], [x1, h1]] = [places[after - 1] ?? [0, 0], places[after] ?? [0, 0]];
    return h0 + ((h1 - h0) * (x - x0)) / (x1 - x0);
  };
}

function along(...places: readonly (readonly [x_m: number, height_m: number])[]) {
  const last = places.at(-1)?.[0] ?? 0;
  const route = createRoute([
    { x: 0, y: 0 },
    { x: last, y: 0 },
  ]);
  const profiles = profilesOf(route, ground(...places));
  const tree = lineTree(profiles);
  return {
    lows: lowsOf(route, profiles),
    highs: profilePoints(
      profiles,
      tree,
      lineHighs(profiles, tree, pipesOnLegs(route, [], pipe), leastLow_m, [{ line: 0, point: 1 }]),
      [],
    ),
  };
}

/** Low points of one pipe all along a route. */
function lowsOf(route: Route, profiles: readonly Profile[]): readonly ProfilePoint[] {
  const tree = lineTree(profiles);
  const lows = lineLows(profiles, tree, pipesOnLegs(route, [], pipe), leastLow_m);
  return profilePoints(profiles, tree, lows, ponds(profiles, tree, leastLow_m));
}

describe("a line without branches", () => {
  test("a hollow is a low point, as deep as it lies below its lower shoulder, with the pipe below that full", () => {
    const { lows } = along([0, 3], [20, 1], [40, 2], [60, 0]);
    expect(lows).toHaveLength(2);
    const [hollow, end] = lows;
    expect(hollow).toMatchObject({ branch: 0, station_m: 20, isFitted: true });
    expect(hollow?.by_m).toBeCloseTo(1, 9);
    expect(hollow?.height_m).toBeCloseTo(1 - 0.53, 9);
    // Down from 2 m on the left: half of the 20 m that fall from 3 to 1; all 20 m up to the shoulder.
    const slope_m = 10 * Math.hypot(1, 0.1) + 20 * Math.hypot(1, 0.05);
    expect(hollow?.trapped_l).toBeCloseTo(slope_m, 6);
    // The lowest place of all keeps the rest, up to the highest.
    expect(end).toMatchObject({ station_m: 60, isFitted: true });
    expect(end?.by_m).toBeCloseTo(3, 9);
  });

  test("the pipe's litres are told once", () => {
    const { lows } = along([0, 3], [20, 1], [40, 2], [60, 0]);
    const whole_m = 20 * Math.hypot(1, 0.1) + 20 * Math.hypot(1, 0.05) + 20 * Math.hypot(1, 0.1);
    expect(lows.reduce((sum_l, { trapped_l }) => sum_l + trapped_l, 0)).toBeCloseTo(whole_m, 6);
  });

  test("a ripple on the floor of a hollow gets no drain of its own, and does not hide the hollow", () => {
    const { lows } = along([0, 3], [20, 1], [25, 1.05], [30, 1.02], [50, 3.5]);
    expect(lows.filter(({ isFitted }) => isFitted)).toHaveLength(1);
    const deep = lows.find(({ isFitted }) => isFitted);
    expect(deep?.station_m).toBe(20);
    expect(lows.find(({ station_m }) => station_m === 30)).toMatchObject({ isFitted: false });
  });

  test("a hollow just under the depth that is drained is told and not fitted, one just over it is", () => {
    for (const [deep_m, isFitted] of [
      [0.14, false],
      [0.16, true],
    ] as const) {
      const { lows } = along([0, 2], [20, 1], [40, 1 + deep_m], [60, 0]);
      expect(lows.find(({ station_m }) => station_m === 20)).toMatchObject({ isFitted });
    }
  });

  test("level ground has no low point, and air only at the far end", () => {
    const { lows, highs } = along([0, 7], [100, 7]);
    expect(lows).toEqual([]);
    expect(highs).toEqual([expect.objectContaining({ station_m: 100, by_m: 0, isFitted: true })]);
  });

  test("air gathers at high points and always at the far end", () => {
    const { highs } = along([0, 0], [20, 2], [40, 1], [60, 1.1], [80, 0]);
    expect(highs.filter(({ isFitted }) => isFitted).map(({ station_m }) => station_m)).toEqual([20, 80]);
    expect(highs.find(({ station_m }) => station_m === 60)).toMatchObject({ isFitted: false });
  });
});

describe("a line with branches", () => {
  /** A main of 100 m east with a branch of 50 m north at its middle. */
  const tree3 = createRoute([
    { x: 0, y: 0 },
    { x: 50, y: 0 },
    { x: 100, y: 0 },
    { x: 50, y: 40, upstream: 1 },
  ]);

  test("a low where branches meet is one low, with the pipe of all three", () => {
    const profiles = profilesOf(tree3, (x, y) => 0.02 * Math.abs(x - 50) + 0.05 * y);
    const lows = lowsOf(tree3, profiles);
    expect(lows).toHaveLength(1);
    expect(lows[0]).toMatchObject({ branch: 0, station_m: 50, isFitted: true });
    const whole_m = 100 * Math.hypot(1, 0.02) + 40 * Math.hypot(1, 0.05);
    expect(lows[0]?.trapped_l).toBeCloseTo(whole_m, 6);
  });

  test("what runs off by a branch is no low, though the main goes up on both sides", () => {
    const profiles = profilesOf(tree3, (x, y) => 0.02 * Math.abs(x - 50) - 0.05 * y);
    const lows = lowsOf(tree3, profiles);
    expect(lows).toEqual([expect.objectContaining({ branch: 1, station_m: 40 })]);
  });

  test("no low is told where the water may leave over ground that is not known", () => {
    const route = createRoute([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
    ]);
    const fall = (x: number) => (x > 60 ? null : 10 - 0.1 * x);
    const profiles = profilesOf(route, fall);
    expect(lowsOf(route, profiles)).toEqual([]);
  });
});

/** Trees with heights: every node hangs on an earlier one. */
const trees = fc
  .array(fc.tuple(fc.nat({ max: 40 }), fc.integer({ min: 0, max: 40 })), { minLength: 2, maxLength: 30 })
  .map((nodes) => {
    const route = createRoute(
      nodes.map(([hang, height], i) => ({ x: i * 7, y: height, upstream: i === 0 ? -1 : hang % i })),
    );
    return { route, height_m: nodes.map(([, height]) => height / 4) };
  });

test("every hollow is as deep as the lowest way over to a lower place (against trying all ways)", () => {
  fc.assert(
    fc.property(trees, ({ route, height_m }) => {
      const profiles = branchesOf(route).map(
        (branch) => profileOf(route, branch, () => 0, layers, { ...steps, stationStep_m: 1e6 }).profile,
      );
      const tree = lineTree(profiles);
      const own_m = Float64Array.from(tree.branch, (branch, node) => {
        return Number(height_m[Number(profiles[branch]?.point[Number(tree.station[node])])]);
      });
      const told = poolsOf(own_m, tree, 1e-6, leastLow_m);
      const expected = hollowsByTrying(own_m, tree);
      expect(told.map(({ by_m }) => by_m).sort()).toEqual(expected.sort());
      const whole_m = tree.length_m.reduce((sum_m, each_m) => sum_m + each_m, 0);
      const held_m = told
        .filter(({ isFitted }) => isFitted)
        .reduce((sum_m, { length_m }) => sum_m + Number(length_m[0]), 0);
      expect(held_m).toBeLessThanOrEqual(whole_m * (1 + near));
      for (const { length_m } of told) expect(Number(length_m[0])).toBeGreaterThanOrEqual(-near);
      expect(new Set(told.map(({ node }) => node)).size).toBe(told.length);
    }),
    { seed: 72, numRuns: 500 },
  );
});

/** For every node the least height over which a lower one is reached (lower by number where heights are equal), by visiting all. */
function hollowsByTrying(height_m: Float64Array, tree: ReturnType<typeof lineTree>): number[] {
  const isLower = (a: number, b: number) =>
    Number(height_m[a]) < Number(height_m[b]) || (height_m[a] === height_m[b] && a < b);
  const found: number[] = [];
  for (const start of height_m.keys()) {
    let over_m = Infinity;
    const visit = (node: number, from: number, most_m: number): void => {
      for (const piece of tree.pieces[node] ?? []) {
        const next = otherEnd(tree, piece, node);
        if (next === from) continue;
        const crest_m = Math.max(most_m, Number(height_m[next]));
        if (isLower(next, start)) over_m = Math.min(over_m, crest_m);
        else visit(next, node, crest_m);
      }
    };
    visit(start, -1, Number(height_m[start]));
    const by_m = (over_m === Infinity ? Math.max(...height_m) : over_m) - Number(height_m[start]);
    if (by_m >= 1e-6) found.push(by_m);
  }
  return found;
}
