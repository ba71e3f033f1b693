import { describe, expect, test } from "vitest";
import { bendsOf } from "../../../src/core/trench/bends.ts";
import { branchesOf } from "../../../src/core/trench/branches.ts";
import { flexed_deg } from "../../../src/core/trench/elbows.ts";
import { laneConflicts } from "../../../src/core/trench/lane-conflicts.ts";
import { turningConflicts } from "../../../src/core/trench/turning-room.ts";
import { createTrellisSettings } from "../../support/create-project.ts";
import { createRoute, routePastStarts } from "../../support/create-route.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

/** Three rows of 60 m north from y = 0, 3 m apart; anchors 1.5 m out; line posts 1 m in and on. */
const rows = createRows({ length_m: 60, linePosts: 3 }, { length_m: 60, linePosts: 3 }, { length_m: 60, linePosts: 3 });
const usual = createBlock();
const anchored = { ...usual, rows: { ...usual.rows, anchorOut_m: 1.5 } };
const braced = createBlock({
  trellis: { ...usual.trellis, endAssembly: { ...createTrellisSettings().endAssembly, kind: "h-brace" } },
});

function kinds(beyond_m: number, least_m: number, block = anchored) {
  return laneConflicts(routePastStarts(rows, beyond_m), rows, [block], least_m).map(
    ({ row, end, what, distance_m }) => `${row} ${end} ${what} ${distance_m.toFixed(3)}`,
  );
}

describe("distances from the trench to what stands", () => {
  test("a trench past the anchors by the least distance is no conflict", () => {
    expect(kinds(2.5, 1)).toEqual([]);
  });

  test("half a metre nearer every anchor is one, and no post", () => {
    expect(kinds(2, 1)).toEqual(["0 start anchor 0.500", "1 start anchor 0.500", "2 start anchor 0.500"]);
  });

  test("between end post and anchor both are", () => {
    expect(kinds(0.75, 1)).toEqual([
      "0 start post 0.750",
      "0 start anchor 0.750",
      "1 start post 0.750",
      "1 start anchor 0.750",
      "2 start post 0.750",
      "2 start anchor 0.750",
    ]);
  });

  test("ends without an anchor have none to be near to", () => {
    expect(kinds(2, 1, braced)).toEqual([]);
    expect(kinds(0.5, 1, braced)).toHaveLength(3);
  });

  test("a line that someone drew through the rows comes near to line posts, told at the nearer end", () => {
    const through = createRoute([
      { x: -5, y: 58.5 },
      { x: 4, y: 58.5 },
    ]);
    expect(
      laneConflicts(through, rows, [anchored], 1).map(({ row, end, what, distance_m }) => [row, end, what, distance_m]),
    ).toEqual([
      [0, "end", "post", 0.5],
      [1, "end", "post", 0.5],
    ]);
  });

  test("the place on the trench is told", () => {
    const [first] = laneConflicts(routePastStarts(rows, 2), rows, [anchored], 1);
    expect(first?.xy[0]).toBeCloseTo(0, 9);
    expect(first?.xy[1]).toBeCloseTo(-2, 9);
  });
});

describe("room to turn", () => {
  const route = createRoute([
    { x: -12, y: -20 },
    { x: -12, y: -2.5 },
    { x: 6, y: -2.5, row: 2 },
  ]);
  const branches = branchesOf(route);
  const bends = bendsOf(route, branches, () => flexed_deg({ outside_mm: 50, stick_m: 6, joint: "solvent" }));
  const wall = { xy: Float64Array.from([-14, -30, -14, 0]) };
  const told = (room_m: number, barriers = { xy: new Float64Array() }) =>
    turningConflicts(route, branches, bends, rows, [anchored], barriers, room_m).map(
      ({ row, what, distance_m, least_m }) => [row, what, distance_m, least_m],
    );

  test("the end of the line is a place where the trencher drives off: a metre past the anchor is too little", () => {
    expect(told(3)).toEqual([[2, "turning", 1, 3]]);
    expect(told(1)).toEqual([]);
  });

  test("at bends and ends a boundary counts too, and is no row's", () => {
    expect(told(3, wall).filter(([row]) => row === -1)).toEqual([
      [-1, "turning", 2, 3],
      [-1, "turning", 2, 3],
    ]);
  });
});
