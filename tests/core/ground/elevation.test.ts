import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Elevation, elevationOf, heightReader } from "../../../src/core/ground/elevation.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { SpotHeight } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { at, createProject, testFrame } from "../../support/create-project.ts";

type Spot = readonly [x_m: number, y_m: number, height_m: number];

function createSpots(...spots: readonly Spot[]): readonly SpotHeight[] {
  return spots.map(([x, y, height_m], i) => ({ key: `spot-${i + 1}`, name: null, at: at([x, y]), height_m }));
}

const groundOf = (...spots: readonly Spot[]) => elevationOf(createSpots(...spots), testFrame);

const plane = (x: number, y: number) => 120 + 0.08 * x - 0.05 * y;
const onPlane = (x: number, y: number): Spot => [x, y, plane(x, y)];
/** A grid, as walked with a rover: the commonest set of spot heights, with many in line on the hull. */
const grid = (height: (x: number, y: number) => number, step_m = 20): readonly Spot[] =>
  [0, 1, 2, 3, 4].flatMap((i) =>
    [0, 1, 2, 3, 4, 5, 6, 7].map((k): Spot => {
      const [x, y] = [-10 + i * step_m, -10 + k * step_m];
      return [x, y, height(x, y)];
    }),
  );

const height_m = 1e-6;
/** Metres spread evenly: doubles by their bits would nearly all lie at 0. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((n) => least + ((most - least) * n) / 1_000_000);

describe("the ground between spot heights", () => {
  test("three spot heights make a plane between them", () => {
    const { elevation, findings } = groundOf(onPlane(0, 0), onPlane(100, 0), onPlane(0, 100));
    expect(findings).toEqual([]);
    expect(heightReader(elevation)(20, 30)).toBeCloseTo(plane(20, 30), 6);
  });

  test("spot heights on a grid over a slope give the slope everywhere, in whatever order places are asked", () => {
    const heightAt = heightReader(groundOf(...grid(plane)).elevation);
    const place = fc.tuple(between(-9.99, 69.99), between(-9.99, 129.99));
    fc.assert(
      fc.property(place, ([x, y]) => {
        expect(Math.abs(Number(heightAt(x, y)) - plane(x, y))).toBeLessThan(height_m);
      }),
      { seed: 24011, numRuns: 500 },
    );
  });

  test("at every spot height the ground is as high as it was measured", () => {
    const spots = grid((x, y) => 100 + 3 * Math.sin(x / 15) + 2 * Math.cos(y / 22));
    const heightAt = heightReader(groundOf(...spots).elevation);
    for (const [x, y, measured_m] of spots)
      expect(Math.abs(Number(heightAt(x, y)) - measured_m)).toBeLessThan(height_m);
  });

  test("outside the spot heights nothing is guessed", () => {
    const heightAt = heightReader(groundOf(onPlane(0, 0), onPlane(100, 0), onPlane(0, 100)).elevation);
    expect(heightAt(60, 60)).toBeNull();
    expect(heightAt(-1, 50)).toBeNull();
    expect(heightAt(20, 20)).not.toBeNull();
  });

  test("walking from triangle to triangle finds what looking at every one of them finds", () => {
    const spot = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), between(90, 110));
    const place = fc.tuple(between(-3, 33), between(-3, 33));
    let inside = 0;
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 3, maxLength: 40, size: "max" }),
        fc.array(place, { minLength: 20, maxLength: 20 }),
        (spots, places) => {
          const { elevation } = groundOf(...spots);
          if (elevation.kind !== "spot-heights") return;
          const heightAt = heightReader(elevation);
          for (const [x, y] of places) {
            const all = inEveryTriangle(elevation, x, y);
            const found = heightAt(x, y);
            if (all === "on an edge") continue;
            if (all === null) expect(found).toBeNull();
            else {
              inside++;
              expect(Math.abs(Number(found) - all)).toBeLessThan(height_m);
            }
          }
        },
      ),
      { seed: 24012, numRuns: 300 },
    );
    expect(inside).toBeGreaterThan(1000);
  });

  test.each([
    { spots: [onPlane(0, 0)], says: "1 spot height is too few, so the ground is taken as flat." },
    { spots: [onPlane(0, 0), onPlane(50, 0)], says: "2 spot heights are too few, so the ground is taken as flat." },
    {
      spots: [onPlane(0, 0), onPlane(50, 10), onPlane(100, 20), onPlane(400, 80)],
      says: "The spot heights lie in one line, so the ground is taken as flat.",
    },
  ])("$says", ({ spots, says }) => {
    const { elevation, findings } = groundOf(...spots);
    expect(elevation).toEqual({ kind: "flat" });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["ground/heights-too-few", "note"]]);
    expect(text(findings[0]?.message ?? [], "metric")).toBe(says);
  });
});

describe("rows over the ground between spot heights", () => {
  const planned = (spots: readonly Spot[]) =>
    createPlanner().plan(createProject({ spotHeights: createSpots(...spots) }));

  test("on level spot heights rows are as long along the ground as in plan, to the last digit that counts", () => {
    const { rows } = planned(grid(() => 85));
    expect(rows?.rows.length).toBeGreaterThan(5);
    for (const row of rows?.rows ?? []) expect(row.groundLength_m).toBeCloseTo(row.length_m, 9);
  });

  test("rows up a slope of 15 % are longer along the ground by the slope, and nothing else moves", () => {
    const flat = planned([]);
    const steep = planned(grid((_, y) => 0.15 * y));
    expect(steep.findings.filter(({ code }) => code === "rows/heights-missing")).toEqual([]);
    for (const [i, row] of (steep.rows?.rows ?? []).entries()) {
      expect(row.groundLength_m / row.length_m).toBeCloseTo(Math.hypot(1, 0.15), 6);
      expect(row.start).toEqual(flat.rows?.rows[i]?.start);
      expect(row.length_m).toBe(flat.rows?.rows[i]?.length_m);
    }
    expect(Number(steep.trellis?.wire_m.fruiting)).toBeGreaterThan(Number(flat.trellis?.wire_m.fruiting));
  });

  test("a height that is measured again changes the lengths of a plan at hand as it does those of a new one", () => {
    const planner = createPlanner();
    planner.plan(createProject({ spotHeights: createSpots(...grid((_, y) => 0.05 * y)) }));
    const project = createProject({ spotHeights: createSpots(...grid((_, y) => 0.12 * y)) });
    const [warm, cold] = [planner.plan(project), createPlanner().plan(project)];
    expect(warm.rows?.rows).toEqual(cold.rows?.rows);
    expect(warm.trellis?.wire_m).toEqual(cold.trellis?.wire_m);
  });

  test("rows that lie partly outside the spot heights keep their level length, and one warning names them", () => {
    const { rows, findings } = planned([onPlane(-5, -5), onPlane(30, -5), onPlane(30, 125), onPlane(-5, 125)]);
    const missing = findings.filter(({ code }) => code === "rows/heights-missing");
    expect(missing.map(({ severity }) => severity)).toEqual(["warning"]);
    const [inside, outside] = [
      rows?.rows.filter(({ start }) => start[0] < 30),
      rows?.rows.filter(({ start }) => start[0] > 30),
    ];
    expect(inside?.every((row) => row.groundLength_m > row.length_m)).toBe(true);
    expect(outside?.length).toBeGreaterThan(0);
    expect(outside?.every((row) => row.groundLength_m === row.length_m)).toBe(true);
    expect(text(missing[0]?.message ?? [], "metric")).toContain(`rows ${outside?.[0]?.id}, `);
  });
});

/** The slow way: every triangle, by its own plane; "on an edge" where rounding decides. */
function inEveryTriangle(elevation: Elevation & { readonly kind: "spot-heights" }, x: number, y: number) {
  const { xy, height_m: heights, triangles } = elevation;
  let found: number | null = null;
  for (let n = 0; n < triangles.length; n += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const spot = Number(triangles[n + k]);
      return { x: Number(xy[2 * spot]), y: Number(xy[2 * spot + 1]), z: Number(heights[spot]) };
    });
    if (a === undefined || b === undefined || c === undefined) throw new Error("a triangle has three corners");
    const whole = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
    const u = ((x - a.x) * (c.y - a.y) - (c.x - a.x) * (y - a.y)) / whole;
    const v = ((b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)) / whole;
    // Along a line of the grid, places that are in line anywhere but on paper make triangles without width.
    if (Math.abs(whole) < 1e-3) continue;
    const least = Math.min(u, v, 1 - u - v);
    if (Math.abs(least) < 1e-3) return "on an edge" as const;
    if (least > 0) found = a.z + u * (b.z - a.z) + v * (c.z - a.z);
  }
  return found;
}
