import { expect, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSetting } from "../../../src/core/project/edits.ts";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { rowSide } from "../../../src/core/sheets/row-side.ts";
import { text } from "../../../src/core/units.ts";
import { readSample, sampleNames } from "../../support/sample-plans.ts";

/** Digits after the point, metres. */
const nanometre = 9;

function changed(project: Project, path: string, value: Json): Project {
  const after = withSetting(project, path, value);
  if (!after.ok) throw new Error(`${path} was refused`);
  return after.value;
}

test.each(sampleNames())(
  "in %s the side of every row shows each vine, post, stake and wire at its station",
  (sample) => {
    const plan = createPlanner().plan(readSample(sample));
    const { rows, drip } = plan;
    if (!rows || !drip) throw new Error("the sample is not planned");
    rows.rows.forEach((row, i) => {
      const side = rowSide(plan, row.id);
      const block = plan.project.blocks.find(({ id }) => id === row.block);
      if (!side || !block) throw new Error(`row ${row.id} has no side`);
      const of = (positions: typeof rows.vines) => [
        ...positions.station_m.slice(positions.offsets[i], positions.offsets[i + 1]),
      ];
      expect(side.vines.map(({ station_m }) => station_m)).toEqual(of(rows.vines));
      expect(side.stakes.map(({ station_m }) => station_m)).toEqual(of(rows.stakes));
      expect(side.posts.map(({ station_m }) => station_m)).toEqual([0, ...of(rows.linePosts), row.length_m]);
      expect(side.posts.filter(({ kind }) => kind === "end").map(({ station_m }) => station_m)).toEqual([
        0,
        row.length_m,
      ]);
      expect(side.wires.map(({ height_m, count }) => [height_m, count])).toEqual(
        block.trellis.wires.map(({ height_m, count }) => [height_m, count]),
      );
      expect(side.emitters.reduce((sum, { count }) => sum + count, 0)).toBe(drip.rows[i]?.emitters);
      const hose_m = side.hose ? Math.abs(side.hose.to_m - side.hose.from_m) : 0;
      expect(hose_m).toBeCloseTo(drip.rows[i]?.lateral_m ?? NaN, nanometre);
    });
  },
);

test("bays add up to the row, and the end gaps with the vines between them too", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  for (const { id, length_m } of plan.rows?.rows ?? []) {
    const side = rowSide(plan, id);
    if (!side) throw new Error(`row ${id} has no side`);
    const sum = (kind: string) =>
      side.dimensions
        .filter((each) => each.kind === kind)
        .reduce((total, { from_m, to_m }) => total + to_m - from_m, 0);
    expect(sum("bay")).toBeCloseTo(length_m, nanometre);
    expect(sum("row")).toBe(length_m);
    const vines = side.vines.map(({ station_m }) => station_m);
    expect(sum("end-gap") + Number(vines.at(-1)) - Number(vines[0])).toBeCloseTo(length_m, nanometre);
    for (const { label } of side.dimensions) expect(text(label, "us")).toMatch(/^[\d.,]+ (ft|in)$/);
  }
});

test("posts reach the highest wire, stakes the highest fruiting wire, vines the lowest one", () => {
  const wires = [
    { purpose: "drip", height: 0.4 },
    { purpose: "fruiting", height: 0.9 },
    { purpose: "fruiting", height: 1.2 },
    { purpose: "foliage", height: 1.6, count: 2 },
  ];
  const plan = createPlanner().plan(changed(readSample("crooked-strip"), "trellis.wires", wires));
  const side = rowSide(plan, plan.rows?.rows[0]?.id ?? "");
  expect(side?.top_m).toBe(1.6);
  expect(side?.posts.every(({ height_m }) => height_m === 1.6)).toBe(true);
  expect(side?.stakes.every(({ height_m }) => height_m === 1.2)).toBe(true);
  expect(side?.vines.every(({ height_m }) => height_m === 0.9)).toBe(true);
  expect(side?.hose?.height_m).toBe(0.4);
});

test("a row that meets the water at its end has its hose from there", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  const flipped = { ...plan, mainline: { waterEnd: plan.rows?.rows.map(() => "end" as const) ?? [] } };
  const side = rowSide(flipped, "5");
  expect(side?.hose?.from_m).toBe(side?.length_m);
  expect(Number(side?.hose?.to_m)).toBeLessThan(Number(side?.vines[0]?.station_m));
});

test("hose lies on the ground where no drip wire is strung, and a block without wires still has posts to draw", () => {
  const bare = createPlanner().plan(changed(readSample("crooked-strip"), "trellis.wires", []));
  const side = rowSide(bare, bare.rows?.rows[0]?.id ?? "");
  expect(side?.hose?.height_m).toBe(0);
  expect(side?.wires).toEqual([]);
  expect(side?.top_m).toBeGreaterThan(0);
});

test("a row that does not exist has no side", () => {
  expect(rowSide(createPlanner().plan(readSample("acre-with-notch")), "nowhere")).toBeNull();
});
