import { describe, expect, it, test } from "vitest";
import type { Elevation } from "../../../src/core/ground/elevation.ts";
import { heightReader } from "../../../src/core/ground/elevation.ts";
import { planePoint } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Project, SpotHeight } from "../../../src/core/project/project.ts";
import { rowSlopeAccount } from "../../../src/core/rows/row-accounts.ts";
import { rowSlopes } from "../../../src/core/rows/row-slopes.ts";
import { text } from "../../../src/core/units.ts";
import {
  at,
  createBlock,
  createGroundSettings,
  createProject,
  createRowSettings,
} from "../../support/create-project.ts";

const ratio = 1e-9;

/** Ground that falls by a slope towards a bearing. */
function falling(slope_ratio: number, towards_deg: number): Elevation {
  const towards = (towards_deg * Math.PI) / 180;
  return {
    kind: "plane",
    origin_m: 100,
    east_ratio: -slope_ratio * Math.sin(towards),
    north_ratio: -slope_ratio * Math.cos(towards),
  };
}

describe("slopes of the ground under a row", () => {
  it("8.4-8 a slope of 12 % whose fall line lies 30 degrees off the row is 10.392305 % along and 6 % across", () => {
    // Computed: 12 % · cos 30° and 12 % · sin 30° (calculation handbook, section 8.4). The row runs north, the ground falls to 210 degrees.
    const slopes = rowSlopes(heightReader(falling(0.12, 210)), planePoint(5, 10), planePoint(5, 110), 100, 7.2);
    expect(Math.abs(Number(slopes.slopeAlong_ratio) - 0.103923048)).toBeLessThan(1e-8);
    expect(Math.abs(Number(slopes.slopeAcross_ratio) - 0.06)).toBeLessThan(ratio);
    expect(slopes.fall_deg).toBeCloseTo(210, 6);
  });

  it.each([0, 37, 90, 143, 180, 270])("are the same when ground and row are turned by %d degrees together", (turn) => {
    const heading = (turn * Math.PI) / 180;
    const end = planePoint(80 * Math.sin(heading), 80 * Math.cos(heading));
    const slopes = rowSlopes(heightReader(falling(0.1, 60 + turn)), planePoint(0, 0), end, 80, 7);
    expect(Math.abs(Number(slopes.slopeAlong_ratio) + 0.05)).toBeLessThan(ratio);
    // It falls to the right, so it rises to the left.
    expect(Math.abs(Number(slopes.slopeAcross_ratio) + 0.1 * Math.sin(Math.PI / 3))).toBeLessThan(ratio);
    expect(slopes.fall_deg).toBeCloseTo((60 + turn) % 360, 6);
  });

  it("are those of the steepest place, with its sign", () => {
    // Flat, then 20 % down over 30 m, then 10 % up.
    const height = (y: number) => (y < 30 ? 0 : y < 60 ? -0.2 * (y - 30) : -6 + 0.1 * (y - 60));
    const slopes = rowSlopes((_, y) => height(y), planePoint(0, 0), planePoint(0, 90), 90, 7.5);
    expect(Number(slopes.slopeAlong_ratio)).toBeCloseTo(-0.2, 9);
    expect(Number(slopes.slopeAcross_ratio)).toBeCloseTo(0, 9);
  });

  it("are taken over a post spacing: noise of 5 cm does not make a slope of 10 % of level ground", () => {
    const noise = (x: number, y: number) => 0.05 * Math.sin(1000 * x + 919 * y);
    const over = (step_m: number) =>
      Math.abs(Number(rowSlopes(noise, planePoint(0, 0), planePoint(0, 200), 200, step_m).slopeAlong_ratio));
    expect(over(7.2)).toBeLessThan(0.015);
    expect(over(1)).toBeGreaterThan(0.05);
  });

  it("beside the border of what is known they are taken from the side that is", () => {
    const known = (x: number) => (x >= 5 ? 0.04 * x : null);
    const slopes = rowSlopes(known, planePoint(6, 0), planePoint(6, 70), 70, 7);
    expect(slopes.slopeAcross_ratio).toBeCloseTo(0.04, 9);
    expect(rowSlopes(() => null, planePoint(6, 0), planePoint(6, 70), 70, 7)).toEqual({
      slopeAlong_ratio: null,
      slopeAcross_ratio: null,
      fall_deg: null,
    });
  });
});

describe("rows on a slope", () => {
  const corners = [
    [-30, -30],
    [90, -30],
    [90, 150],
    [-30, 150],
  ] as const;
  const sloping = (height: (x: number, y: number) => number): readonly SpotHeight[] =>
    corners.map(([x, y], i) => ({ key: `spot-${i}`, name: null, at: at([x, y]), height_m: height(x, y) }));
  const plan = (change: Partial<Project>) => createPlanner().plan(createProject(change));
  const steep = (findings: ReturnType<typeof plan>["findings"]) =>
    findings.filter(({ code }) => code.startsWith("rows/steep"));

  test("know where the ground falls to, and carry it into the account", () => {
    const settings = createRowSettings();
    const { rows, findings } = plan({ spotHeights: sloping((x, y) => 100 - 0.06 * x + 0.04 * y) });
    expect(steep(findings)).toEqual([]);
    for (const row of rows?.rows ?? []) {
      expect(row.slopeAlong_ratio).toBeCloseTo(0.04, 6);
      expect(row.slopeAcross_ratio).toBeCloseTo(-0.06, 6);
      // Down 6 % to the east and 4 % to the south: atan(6 / 4) east of south.
      expect(row.aspect_deg).toBeCloseTo(180 - (Math.atan2(6, 4) * 180) / Math.PI, 2);
      expect(rowSlopeAccount(row, "along", settings)?.value).toBeCloseTo(Number(row.slopeAlong_ratio), 9);
      expect(rowSlopeAccount(row, "across", settings)?.value).toBeCloseTo(Number(row.slopeAcross_ratio), 9);
    }
    const [flat] = plan({}).rows?.rows ?? [];
    expect([flat?.slopeAlong_ratio, flat?.slopeAcross_ratio, flat?.aspect_deg]).toEqual([null, null, null]);
    expect(flat && rowSlopeAccount(flat, "along", settings)).toBeNull();
  });

  test("steeper than the machine may, along or across, are named once a block, with what to check", () => {
    const { findings } = plan({ spotHeights: sloping((x, y) => 100 + 0.09 * x + 0.17 * y) });
    expect(steep(findings).map(({ code, severity }) => [code, severity])).toEqual([
      ["rows/steep-along", "warning"],
      ["rows/steep-across", "warning"],
    ]);
    const [along, across] = steep(findings).map(({ message }) => text(message, "metric"));
    expect(along).toMatch(/^Block 1: rows 1, 2, .* more are up to 17 % steep along the row; the limit is 15 %\.$/);
    expect(across).toMatch(/^Block 1: rows 1, 2, .* more lean up to 9 % to the side; the limit is 8 %\.$/);
    for (const { remedy } of steep(findings)) {
      expect(text(remedy, "us")).toContain("check the machine's own slope rating and its roll-over protection");
    }
  });

  test("the limits are the person's, and ground of just the limit is not above it", () => {
    const spotHeights = sloping((x, y) => 100 + 0.09 * x + 0.17 * y);
    const limits = (along: number, across: number) =>
      steep(
        plan({
          spotHeights,
          ground: createGroundSettings({ steepestAlong_ratio: along, steepestAcross_ratio: across }),
        }).findings,
      ).map(({ code }) => code);
    expect(limits(0.2, 0.1)).toEqual([]);
    expect(limits(0.2, 0.05)).toEqual(["rows/steep-across"]);
    expect(limits(0.17, 0.09)).toEqual([]);
  });

  test("turned into the fall line they do not lean any more", () => {
    const spotHeights = sloping((x) => 100 + 0.1 * x);
    const north = steep(plan({ spotHeights }).findings);
    const east = steep(
      plan({ spotHeights, blocks: [createBlock({ bearing: { kind: "given", bearing_deg: 90 } })] }).findings,
    );
    expect(north.map(({ code }) => code)).toEqual(["rows/steep-across"]);
    expect(east).toEqual([]);
  });
});
