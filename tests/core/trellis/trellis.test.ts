import { expect, test } from "vitest";
import { trellis } from "../../../src/core/trellis/trellis.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

const sixWires = createBlock({
  trellis: {
    ...createBlock().trellis,
    wires: [{ purpose: "foliage", height_m: 1.2, diameter_mm: 2, count: 6 }],
  },
});

// Calculation handbook 2.6, computed there; tie-off allowances are common practice.
const check2_34_m = 1e-9;
const check2_35_m = 1e-6;

test("check 2-34: a row of 91.44 m with 0.75 m at each tie-off takes 92.94 m a wire and 557.64 m for six", () => {
  const row = trellis(createRows({ length_m: 91.44 }), [sixWires]).rows[0];
  expect(Math.abs((row?.run_m ?? 0) - 92.94)).toBeLessThan(check2_34_m);
  expect(Math.abs((row?.wire_m.foliage ?? 0) - 557.64)).toBeLessThan(check2_34_m);
});

test("check 2-35: rows of 91.44, 88.2, 85.0 and 40.3 m with six wires take 1865.64 m", () => {
  const rows = createRows({ length_m: 91.44 }, { length_m: 88.2 }, { length_m: 85 }, { length_m: 40.3 });
  expect(Math.abs((trellis(rows, [sixWires]).wire_m.foliage ?? 0) - 1865.64)).toBeLessThan(check2_35_m);
});

test("wire follows the ground, and a loop takes its own allowance", () => {
  const block = createBlock({
    trellis: { ...sixWires.trellis, tieOffEnd: { kind: "loop", allowance_m: 1 } },
  });
  const row = trellis(createRows({ length_m: 100, groundLength_m: 101.2 }), [block]).rows[0];
  expect(row?.run_m).toBeCloseTo(102.95, 9);
});

test("wire is told apart by purpose, and a purpose that a block has none of is not there", () => {
  const { rows, wire_m } = trellis(createRows({ length_m: 98.5 }, { length_m: 48.5 }), [createBlock()]);
  expect(rows[0]?.wire_m).toEqual({ drip: 100, fruiting: 200 });
  expect(wire_m).toEqual({ drip: 150, fruiting: 300 });
});

test("two diameters of one purpose are bought apart", () => {
  const block = createBlock({
    trellis: {
      ...createBlock().trellis,
      wires: [
        { purpose: "fruiting", height_m: 0.9, diameter_mm: 2.5, count: 1 },
        { purpose: "fruiting", height_m: 1.1, diameter_mm: 2, count: 2 },
      ],
    },
  });
  expect(trellis(createRows({ length_m: 98.5 }, { length_m: 48.5 }), [block]).wires).toEqual([
    { purpose: "fruiting", diameter_mm: 2.5, length_m: 150, runs: 2, longestRun_m: 100 },
    { purpose: "fruiting", diameter_mm: 2, length_m: 300, runs: 4, longestRun_m: 100 },
  ]);
});

test("every stake takes a clip on every fruiting wire, pairs counted twice, and none on the drip wire", () => {
  const paired = createBlock({
    trellis: {
      ...createBlock().trellis,
      wires: [
        { purpose: "drip", height_m: 0.45, diameter_mm: 2, count: 1 },
        { purpose: "fruiting", height_m: 0.9, diameter_mm: 2, count: 1 },
        { purpose: "fruiting", height_m: 1.1, diameter_mm: 2, count: 2 },
      ],
    },
  });
  expect(trellis(createRows({ length_m: 30, vines: 12 }), [paired]).rows[0]?.stakeClips).toBe(36);
});

test("a row of two blocks takes the wires of its own block", () => {
  const rows = createRows({ length_m: 98.5, block: "west" }, { length_m: 98.5, block: "east" });
  const west = createBlock({ id: "west", trellis: { ...createBlock().trellis, wires: [] } });
  const result = trellis(rows, [west, createBlock({ id: "east" })]);
  expect(result.rows.map((row) => row.wire_m)).toEqual([{}, { drip: 100, fruiting: 200 }]);
});
