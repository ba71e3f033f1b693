import { expect, test } from "vitest";
import { drip } from "../../../src/core/drip/drip.ts";
import { materials } from "../../../src/core/materials/materials.ts";
import type { Block, MaterialSettings } from "../../../src/core/project/project.ts";
import type { Rows } from "../../../src/core/rows/rows.ts";
import { trellis } from "../../../src/core/trellis/trellis.ts";
import { createBlock, createMaterialSettings, createRows } from "../../support/create-rows.ts";

const foot_m = 0.3048;

function materialsOf(rows: Rows, blocks: readonly Block[] = [createBlock()], settings: Partial<MaterialSettings> = {}) {
  const waterEnd = rows.rows.map(() => "start" as const);
  const result = materials(
    rows,
    trellis(rows, blocks),
    drip(rows, { waterEnd }, blocks),
    blocks,
    createMaterialSettings(settings),
  );
  if (!result.ok) throw new Error("materials always gives a list");
  return { lines: result.value.lines, codes: result.findings.map((finding) => finding.code) };
}

function line(rows: Rows, item: string, blocks?: readonly Block[], settings?: Partial<MaterialSettings>) {
  return materialsOf(rows, blocks, settings).lines.find((candidate) => candidate.item === item);
}

test("check 2-38: 11 rows of 448 ft with two wires are three coils of 4000 ft by length", () => {
  // Layout of Iowa State University's vineyard establishment budget, as quoted in the calculation handbook.
  const bare = { kind: "gripper", allowance_m: 0 } as const;
  const block = createBlock({
    trellis: { ...createBlock().trellis, tieOffStart: bare, tieOffEnd: bare },
  });
  const rows = createRows(...Array.from({ length: 11 }, () => ({ length_m: 448 * foot_m })));
  const wire = line(rows, "Wire, fruiting", [block], { wireCoil_m: 4000 * foot_m });
  expect(wire?.quantity).toBeCloseTo(9856 * foot_m, 6);
  expect(wire?.packs).toEqual([{ size: 4000 * foot_m, count: 3 }]);
  expect(wire?.diameter_mm).toBe(2.3241);
});

test("vines are ordered with their spare, rounded up to whole vines", () => {
  const rows = createRows({ length_m: 100, vines: 51 }, { length_m: 100, vines: 52 });
  expect(line(rows, "Vines")).toMatchObject({ quantity: 106, unit: "pieces", packs: [] });
});

test("end posts are two a row and one spare, line posts and stakes follow the rows", () => {
  const rows = createRows({ length_m: 100, vines: 50, linePosts: 12 }, { length_m: 60, vines: 30, linePosts: 7 });
  expect(line(rows, "End posts")?.quantity).toBe(5);
  expect(line(rows, "Line posts")?.quantity).toBe(20);
  expect(line(rows, "Training stakes")?.quantity).toBe(80);
});

test("clips and emitters come in bags that cover the spare", () => {
  const rows = createRows({ length_m: 200, vines: 100 });
  expect(line(rows, "Stake clips")).toMatchObject({ quantity: 210, packs: [{ size: 200, count: 2 }] });
  expect(line(rows, "Hose clips")).toMatchObject({ quantity: 107, packs: [{ size: 500, count: 1 }] });
  expect(line(rows, "Emitters")).toMatchObject({ quantity: 105, packs: [{ size: 100, count: 2 }] });
});

test("plantings name their vines and take their own spare, the other rows the default", () => {
  const rows = createRows(
    { length_m: 100, vines: 50 },
    { length_m: 100, vines: 50 },
    { length_m: 100, vines: 50 },
    { length_m: 100, vines: 50 },
  );
  const block = createBlock({
    plantings: [
      { fromRow: 1, toRow: 2, variety: "Early white", rootstock: "lowland stock", spare_ratio: 0.1 },
      { fromRow: 3, toRow: 3, variety: "Late red", rootstock: null, spare_ratio: 0 },
    ],
  });
  const vines = materialsOf(rows, [block]).lines.filter((each) => each.item.startsWith("Vines"));
  expect(vines.map((each) => [each.item, each.quantity])).toEqual([
    ["Vines, Early white on lowland stock", 110],
    ["Vines, Late red", 50],
    ["Vines, variety not chosen", 51],
  ]);
});

test("pieces of a split row belong to the planting of their line's number", () => {
  const rows = createRows({ length_m: 50, vines: 25, number: 14 }, { length_m: 40, vines: 20, number: 14 });
  const block = createBlock({
    plantings: [{ fromRow: 14, toRow: 14, variety: "Late red", rootstock: null, spare_ratio: 0 }],
  });
  expect(line(rows, "Vines, Late red", [block])?.quantity).toBe(45);
});

test("what is not needed is not on the list", () => {
  expect(materialsOf(createRows()).lines).toEqual([]);
  expect(materialsOf(createRows()).codes).toEqual([]);
});

test("coils counted by length say so", () => {
  expect(materialsOf(createRows({ length_m: 100 })).codes).toEqual(["materials/coils-by-length"]);
});

test("a run longer than a coil is pointed out once a purpose", () => {
  expect(materialsOf(createRows({ length_m: 320 }, { length_m: 330 })).codes).toEqual([
    "materials/coils-by-length",
    "materials/run-longer-than-coil",
    "materials/run-longer-than-coil",
  ]);
});

test("rows that stand already are counted and said to be", () => {
  expect(materialsOf(createRows({ length_m: 100, given: "row-1" })).codes).toContain("materials/standing-rows-counted");
});

test.each([
  { from: 7, to: 9, code: "materials/planting-without-rows" },
  { from: 2, to: 9, code: "materials/planting-past-last-row" },
  { from: 1, to: 2, code: "materials/plantings-overlap" },
])("a planting of rows $from to $to beside one of row 1 in a block of two rows gives $code", ({ from, to, code }) => {
  const rows = createRows({ length_m: 100, vines: 50 }, { length_m: 100, vines: 50 });
  const block = createBlock({
    plantings: [
      { fromRow: 1, toRow: 1, variety: "Early white", rootstock: null, spare_ratio: 0 },
      { fromRow: from, toRow: to, variety: "Late red", rootstock: null, spare_ratio: 0 },
    ],
  });
  expect(materialsOf(rows, [block]).codes.filter((each) => each.startsWith("materials/planting"))).toEqual([code]);
});
