import { describe, expect, test } from "vitest";
import { elevationOf, heightReader } from "../../../src/core/ground/elevation.ts";
import { gridGround } from "../../../src/core/ground/grid-heights.ts";
import { lonLat, planePoint } from "../../../src/core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../../src/core/plane/frame.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { HeightGrid } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { at, createProject, testFrame } from "../../support/create-project.ts";

type Height = (x_m: number, y_m: number) => number;

/** A grid around a place of the test plane; heights are given in the plane of its own frame, as it is made from a survey. */
function createGrid(height: Height, change: Partial<HeightGrid> = {}): HeightGrid {
  const { columns = 61, rows = 91, cell_m = 2, origin = at([30, 60]) } = change;
  const height_m = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      height_m[row * columns + column] = height((column - (columns - 1) / 2) * cell_m, ((rows - 1) / 2 - row) * cell_m);
    }
  }
  return { key: "survey", name: "survey", origin, columns, rows, cell_m, height_m, ...change };
}

const height_m = 1e-6;

describe("heights on a grid", () => {
  test("a slope is read as it is, in the frame that the grid was made in", () => {
    const own = createFrame(at([30, 60]));
    const heightAt = heightReader(
      gridGround(
        createGrid((x, y) => 120 + 0.08 * x - 0.05 * y),
        own,
      ),
    );
    for (const [x, y] of [
      [0, 0],
      [12.34, -45.6],
      [-60, 90],
      [60, -90],
    ] as const) {
      expect(Math.abs(Number(heightAt(x, y)) - (120 + 0.08 * x - 0.05 * y))).toBeLessThan(height_m);
    }
  });

  test("between four places the height is bilinear, and a shift of half a cell would be seen", () => {
    const own = createFrame(at([30, 60]));
    const heightAt = heightReader(
      gridGround(
        createGrid((x, y) => x * y, { columns: 3, rows: 3, cell_m: 10 }),
        own,
      ),
    );
    expect(Number(heightAt(5, 5))).toBeCloseTo(25, 6);
    expect(Number(heightAt(-2.5, 7.5))).toBeCloseTo(-18.75, 6);
    expect(Number(heightAt(10, 10))).toBeCloseTo(100, 6);
  });

  test("outside the grid nothing is guessed, nor where one of the four heights is missing", () => {
    const own = createFrame(at([30, 60]));
    const heightAt = heightReader(
      gridGround(
        createGrid((x, y) => (x === 0 && y === 0 ? NaN : 100), { columns: 5, rows: 5, cell_m: 10 }),
        own,
      ),
    );
    expect([heightAt(20.1, 0), heightAt(0, -20.1), heightAt(-1000, 0), heightAt(Number.NaN, 0)]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect([heightAt(5, 5), heightAt(-9, 1), heightAt(1, -9)]).toEqual([null, null, null]);
    expect([heightAt(15, 5), heightAt(-20, 20), heightAt(20, 0)]).toEqual([100, 100, 100]);
    // Zero is a height.
    const sea = heightReader(
      gridGround(
        createGrid(() => 0),
        own,
      ),
    );
    expect(sea(3, 4)).toBe(0);
  });

  /** How far the affine of a grid puts a place off, m. */
  function worstOff_m(frame: Frame, grid: HeightGrid): number {
    const own = createFrame(grid.origin);
    const { cells } = gridGround(grid, frame);
    const [wide_m, high_m] = [((grid.columns - 1) / 2) * grid.cell_m, ((grid.rows - 1) / 2) * grid.cell_m];
    let worst = 0;
    for (const x of [-wide_m, 0, wide_m]) {
      for (const y of [-high_m, 0, high_m]) {
        const [px, py] = frame.toPlane(own.toLonLat(planePoint(x, y)));
        const column = cells.column0 + cells.columnPerX * px + cells.columnPerY * py;
        const row = cells.row0 + cells.rowPerX * px + cells.rowPerY * py;
        const [east, north] = [
          (column - (grid.columns - 1) / 2) * grid.cell_m,
          ((grid.rows - 1) / 2 - row) * grid.cell_m,
        ];
        worst = Math.max(worst, Math.hypot(east - x, north - y));
      }
    }
    return worst;
  }

  test.each([
    { apart_m: 2000, wide_m: 2000, off_m: 0.001 },
    { apart_m: 10_000, wide_m: 2000, off_m: 0.005 },
    { apart_m: 10_000, wide_m: 10_000, off_m: 0.05 },
  ])("one affine from frame to grid is off by less than $off_m m, $wide_m m wide and $apart_m m apart", (each) => {
    const cells = Math.round(each.wide_m / 50) + 1;
    for (const lat of [5, 42.6, -45, 65]) {
      const frame = createFrame(lonLat(-76.9, lat));
      const origin = frame.toLonLat(planePoint(0.8 * each.apart_m, 0.6 * each.apart_m));
      const grid = createGrid(() => 0, { origin, columns: cells, rows: cells, cell_m: 50 });
      expect(worstOff_m(frame, grid)).toBeLessThan(each.off_m);
    }
  });
});

describe("which heights count", () => {
  const spots = [
    [0, 0],
    [60, 0],
    [0, 120],
  ].map(([x = 0, y = 0], i) => ({
    key: `spot-${i}`,
    name: null,
    at: at([x, y]),
    height_m: 7,
  }));

  test("a grid goes before spot heights, and the finest grid before others; the rest is named", () => {
    const [coarse, fine] = [
      createGrid(() => 10, { key: "coarse", cell_m: 10 }),
      createGrid(() => 20, { key: "fine", name: null, cell_m: 2 }),
    ];
    const { elevation, findings } = elevationOf(spots, testFrame, [fine, coarse]);
    expect(heightReader(elevation)(30, 60)).toBe(20);
    expect(findings.map(({ code, severity, feature }) => [code, severity, feature])).toEqual([
      ["ground/heights-not-used", "note", "fine"],
    ]);
    expect(text(findings[0]?.message ?? [], "metric")).toBe(
      'Heights come from the grid "fine" with cells of 2 m; 1 other grid and 3 spot heights are not used.',
    );
    expect(elevationOf([], testFrame, [coarse]).findings).toEqual([]);
    const [same, last] = [createGrid(() => 1, { key: "first" }), createGrid(() => 2, { key: "last" })];
    expect(heightReader(elevationOf([], testFrame, [same, last]).elevation)(30, 60)).toBe(2);
  });

  test("rows over a grid are as long along the ground as on the slope it was made from", () => {
    const heightGrids = [createGrid((_, y) => 100 + 0.15 * y)];
    const { rows, findings } = createPlanner().plan(createProject({ heightGrids }));
    expect(findings.filter(({ code }) => code === "rows/heights-missing")).toEqual([]);
    expect(rows?.rows.length).toBeGreaterThan(5);
    for (const row of rows?.rows ?? []) expect(row.groundLength_m / row.length_m).toBeCloseTo(Math.hypot(1, 0.15), 6);
  });

  test("another grid changes a plan at hand as it does a new one", () => {
    const planner = createPlanner();
    planner.plan(createProject({ heightGrids: [createGrid((_, y) => 0.05 * y)] }));
    const project = createProject({ heightGrids: [createGrid((_, y) => 0.12 * y)] });
    expect(planner.plan(project).rows?.rows).toEqual(createPlanner().plan(project).rows?.rows);
  });
});
