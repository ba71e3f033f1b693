import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pipeSizes } from "../../../src/core/hydraulics/pipe-sizes.ts";
import type { PipeSettings } from "../../../src/core/project/project.ts";
import { bendsOf } from "../../../src/core/trench/bends.ts";
import { branchPipes, sticksFor, sticksOf } from "../../../src/core/trench/branch-pipes.ts";
import { branchesOf } from "../../../src/core/trench/branches.ts";
import { elbowsFor, flexed_deg } from "../../../src/core/trench/elbows.ts";
import { sleeveSticks } from "../../../src/core/trench/pipe-parts.ts";
import { sleevesOf } from "../../../src/core/trench/sleeves.ts";
import type { TrenchPartKind } from "../../../src/core/trench/trench.ts";
import { text } from "../../../src/core/units.ts";
import { createRoute } from "../../support/create-route.ts";
import { createRouteJob, northRows } from "../../support/create-route-job.ts";
import { createRows } from "../../support/create-rows.ts";
import { createTrench } from "../../support/create-trench.ts";

function pipeOf(size: string): PipeSettings {
  const known = pipeSizes.find((each) => each.size === size);
  if (known === undefined) throw new Error(`no pipe ${size}`);
  const { outside_mm, inside_mm, stick_m, joint } = known;
  return { size, outside_mm, inside_mm, stick_m, joint };
}

/** 6 m sticks of 50 mm: 0.075 m go into each bell. */
const solvent = pipeOf("pvc-pn10-50mm");
const gasket = pipeOf("pvc-pn10-110mm");
const coiled = pipeOf("pe100-sdr17-50mm");

describe("sticks", () => {
  test.each([
    [0, 0],
    [0.5, 1],
    [6, 1],
    [6.01, 2],
    [11.925, 2],
    [11.926, 3],
    [17.85, 3],
  ])("%d m take %d sticks of 6 m with 0.075 m in the bell", (length_m, sticks) => {
    expect(sticksFor(length_m, 6, 0.075)).toBe(sticks);
  });

  test("every branch is laid by itself and leaves its own rest", () => {
    const pipes = branchPipes([100, 4, 4], solvent);
    expect(pipes.map(({ sticks, joints }) => [sticks, joints])).toEqual([
      [17, 16],
      [1, 0],
      [1, 0],
    ]);
    expect(pipes.map(({ waste_m }) => waste_m)).toEqual([2, 2, 2]);
    expect(sticksOf(pipes)).toBe(19);
  });

  test("a coil goes on from branch to branch", () => {
    const pipes = branchPipes([90, 30, 30], coiled);
    expect(sticksOf(pipes)).toBe(2);
    expect(pipes.map(({ joints }) => joints)).toEqual([0, 1, 0]);
    expect(pipes.reduce((sum_m, { waste_m }) => sum_m + waste_m, 0)).toBeCloseTo(50, 9);
  });

  test("what is bought is never short of what is laid, and a stick less would be", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (length_m, bell_m) => {
          const sticks = sticksFor(length_m, 6, bell_m);
          const laid_m = (many: number) => many * 6 - Math.max(0, many - 1) * bell_m;
          expect(laid_m(sticks)).toBeGreaterThanOrEqual(length_m - 1e-6);
          if (sticks > 1) expect(laid_m(sticks - 1)).toBeLessThan(length_m + 1e-6);
        },
      ),
      { seed: 73, numRuns: 500 },
    );
  });

  test("sleeves are cut from sticks, longest first", () => {
    expect(sleeveSticks([4, 2, 3, 3], 6)).toBe(2);
    expect(sleeveSticks([13], 6)).toBe(3);
    expect(sleeveSticks([], 6)).toBe(0);
  });
});

describe("bends", () => {
  test.each([
    [8, []],
    [12, [11.25]],
    [20, [22.5]],
    [45, [45]],
    [67.5, [45, 22.5]],
    [88, [90]],
    [135, [90, 45]],
    [180, [90, 90]],
  ])("%d degrees are turned with %j where the pipe takes 10", (angle_deg, elbows) => {
    expect(elbowsFor(angle_deg, 10)).toEqual(elbows);
  });

  test("any angle is turned to within what the pipe takes, with three elbows at most", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: 5.7, max: 45, noNaN: true }),
        (angle_deg, flexible_deg) => {
          const elbows = elbowsFor(angle_deg, flexible_deg);
          const turned_deg = elbows.reduce<number>((sum, each) => sum + each, 0);
          expect(Math.abs(turned_deg - angle_deg)).toBeLessThanOrEqual(flexible_deg + 1e-9);
          expect(elbows.length).toBeLessThanOrEqual(3);
        },
      ),
      { seed: 74, numRuns: 500 },
    );
  });

  test("thick pipe bends less, coiled pipe far more", () => {
    expect(flexed_deg(solvent)).toBe(10);
    expect(flexed_deg({ ...gasket, outside_mm: 400 })).toBeCloseTo((6 / 120) * (180 / Math.PI), 9);
    expect(flexed_deg(coiled)).toBe(45);
  });

  test("a branch that leaves square needs its tee and nothing more; another angle needs elbows behind it", () => {
    const square = createRoute([
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 120, y: 0 },
      { x: 50, y: 40, upstream: 1 },
    ]);
    expect(bendsOf(square, branchesOf(square), () => 10)).toEqual([]);
    const slanting = createRoute([
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 120, y: 0 },
      { x: 80, y: 30, upstream: 1 },
    ]);
    const [bend] = bendsOf(slanting, branchesOf(slanting), () => 10);
    expect(bend?.point).toBe(1);
    expect(bend?.angle_deg).toBeCloseTo(45, 9);
    expect(bend?.elbows).toEqual([45]);
  });

  test("points on one spot make no bend", () => {
    const route = createRoute([
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 50, y: 0 },
      { x: 50, y: 30 },
    ]);
    const bends = bendsOf(route, branchesOf(route), () => 10);
    expect(bends.map(({ point, angle_deg }) => [point, Math.round(angle_deg)])).toEqual([[2, 90]]);
  });
});

describe("sleeves", () => {
  const road = {
    areas: [
      [
        [20, -50],
        [26, -50],
        [26, 50],
        [20, 50],
      ],
    ],
    isCrossable: true,
  } as const;
  const brook = {
    lines: [
      [
        [60, -50],
        [60, 50],
      ],
    ],
    isCrossable: true,
    distance_m: 1.5,
  } as const;
  const { barriers } = createRouteJob({ rows: northRows(1, 50), sources: [[0, 0]], things: [road, brook] });

  test("over an area its width along the way and a little past its edges, across a line what the trench keeps on both sides", () => {
    const route = createRoute([
      { x: 0, y: 0 },
      { x: 15, y: 0 },
      { x: 30, y: 0, crossing: 0 },
      { x: 50, y: 0 },
      { x: 70, y: 0, crossing: 1 },
    ]);
    const sleeves = sleevesOf(route, barriers, () => [50]);
    expect(sleeves.map(({ feature }) => feature)).toEqual(["thing-0", "thing-1"]);
    expect(sleeves[0]?.length_m).toBeCloseTo(6.6, 9);
    expect(sleeves[1]?.length_m).toBeCloseTo(3, 9);
    expect(sleeves[0]?.xy).toEqual([22.5, 0]);
  });

  test("never longer than the leg that crosses", () => {
    const route = createRoute([
      { x: 20, y: 0 },
      { x: 26, y: 0, crossing: 0 },
    ]);
    expect(sleevesOf(route, barriers, () => [50])[0]?.length_m).toBeCloseTo(6, 9);
  });
});

describe("what lies in the trench of five rows", () => {
  const rows = createRows(...Array.from({ length: 5 }, () => ({ length_m: 60, vines: 30 })));
  const quantities = (sketch: Parameters<typeof createTrench>[0] = {}) => {
    const { parts } = createTrench({ rows, ...sketch }).dug;
    return new Map(parts.map(({ article, quantity }) => [article, quantity] as const));
  };

  test("counted by hand: 22 m of main, a tee a row, one valve, one cap, air at the end", () => {
    const counts = quantities();
    expect(Object.fromEntries(counts)).toEqual({
      "main-pipe-pvc-pn10-50mm": 4,
      "valve-tee-pvc-pn10-50mm": 1,
      "main-valve-pvc-pn10-50mm": 1,
      "pipe-cap-pvc-pn10-50mm": 1,
      "air-valve": 1,
      "row-tee-pvc-pn10-50mm": 5,
      "swing-joint": 5,
      // From the middle of the pipe, 0.4572 + 0.025 m down, along 2.5 m of lead and up to the drip wire.
      riser: 5 * (0.4572 + 0.025 + 2.5 + dripWire_m),
      "riser-adapter": 5,
      primer: 1,
      cement: 1,
    });
  });

  test("eighteen joints: 3 between 4 sticks, 2 a row tee, 2 of the valve tee, 2 of the main valve, 1 of the cap", () => {
    const cement = createTrench({ rows }).dug.parts.find(({ kind }) => kind === "cement");
    expect(cement?.purpose).toMatch(/^for 18 joints;/);
  });

  test("tees on the rows' own side of their end posts need no lead and no swing joint", () => {
    const route = createRoute(
      [{ x: -10, y: 0.5 }, ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: 0.5, row }))],
      5,
    );
    const { dug } = createTrench({ rows, route });
    expect(dug.leads_m).toEqual([0, 0, 0, 0, 0]);
    expect(dug.parts.some(({ kind }) => kind === "swing-joint")).toBe(false);
    expect(dug.earth.dug_m).toBeCloseTo(22, 9);
  });

  test("a branch takes a tee and a cap of its own; a bend an elbow", () => {
    const route = createRoute(
      [
        { x: -10, y: -30 },
        { x: -10, y: -2.5 },
        ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -2.5, row })),
        { x: -30, y: -2.5, upstream: 1 },
      ],
      5,
    );
    const counts = quantities({ route });
    expect(counts.get("branch-tee-pvc-pn10-50mm")).toBe(1);
    expect(counts.get("pipe-cap-pvc-pn10-50mm")).toBe(2);
    expect(counts.get("elbow-90-pvc-pn10-50mm")).toBe(1);
  });

  test("a low at the end of the line takes its drain in place of the cap; one on the way takes a tee", () => {
    const slope = [
      [-40, -60, 10],
      [60, -60, 5],
      [60, 60, 5],
      [-40, 60, 10],
    ] as const;
    const falling = quantities({ heights: slope });
    expect(falling.get("drain-valve")).toBe(1);
    expect(falling.has("pipe-cap-pvc-pn10-50mm")).toBe(false);
    expect(falling.get("valve-tee-pvc-pn10-50mm")).toBe(falling.get("air-valve"));
    const hollow = [
      [-40, -60, 10],
      [4, -60, 5],
      [60, -60, 10],
      [60, 60, 10],
      [4, 60, 5],
      [-40, 60, 10],
    ] as const;
    const sagging = quantities({ heights: hollow });
    expect(sagging.get("drain-valve")).toBe(1);
    expect(sagging.get("pipe-cap-pvc-pn10-50mm")).toBe(1);
    expect(sagging.get("valve-tee-pvc-pn10-50mm")).toBe(1 + Number(sagging.get("air-valve")));
  });

  test("thrust blocks only where joints are gasketed, cement only where they are cemented, couplings only between coils", () => {
    const kinds = (pipe: PipeSettings): readonly TrenchPartKind[] =>
      createTrench({ rows, trench: { pipe } }).dug.parts.map(({ kind }) => kind);
    expect(kinds(solvent)).toContain("cement");
    expect(kinds(solvent)).not.toContain("thrust-block");
    // Solvent-welded: off up to 3 in. (calculation handbook, section 7).
    expect(kinds(pipeOf("pvc-40-3in"))).not.toContain("thrust-block");
    expect(kinds(pipeOf("pvc-40-4in"))).toContain("thrust-block");
    expect(kinds(gasket)).toContain("thrust-block");
    expect(kinds(gasket)).not.toContain("cement");
    expect(kinds(coiled)).not.toContain("thrust-block");
    expect(kinds(coiled)).not.toContain("cement");
    expect(kinds({ ...coiled, stick_m: 10 })).toContain("pipe-coupling");
  });

  test("a shop could sell every part by its words", () => {
    const all = [solvent, gasket, { ...coiled, stick_m: 10 }].flatMap(
      (pipe) => createTrench({ rows, trench: { pipe, bedding_m: 0.1 } }).dug.parts,
    );
    expect(all.length).toBeGreaterThan(25);
    for (const { spec, purpose, perRow, quantity, article } of all) {
      for (const units of ["metric", "us"] as const) {
        expect(`${article}: ${text(spec, units)}`).toMatch(/: \w.*\w/);
        expect(text(spec, units)).not.toMatch(/NaN|undefined|null|^,|, ,/);
      }
      expect(purpose).toMatch(/\b(?:1 row|\d+ rows)$/);
      if (perRow !== null) expect(perRow.reduce((sum, each) => sum + each, 0)).toBeCloseTo(quantity, 9);
    }
  });
});

/** Height of the drip wire of the test block. */
const dripWire_m = 0.45;
