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
      expect(side.wires.map(({ height_m, count }) => [height_m.toFixed(9), count])).toEqual(
        block.trellis.wires.map(({ height_m, count }) => [height_m.toFixed(9), count]),
      );
      expect(side.emitters.reduce((sum, { count }) => sum + count, 0)).toBe(drip.rows[i]?.emitters);
      const hose_m = side.hose ? Math.abs(side.hose.to_m - side.hose.from_m) : 0;
      const along = row.groundLength_m / row.length_m;
      expect(hose_m * along).toBeCloseTo(drip.rows[i]?.lateral_m ?? NaN, nanometre);
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

test("posts and stakes stand as the trellis has them, vines reach the lowest fruiting wire", () => {
  const wires = [
    { purpose: "drip", height: 0.4 },
    { purpose: "fruiting", height: 0.9 },
    { purpose: "fruiting", height: 1.2 },
    { purpose: "foliage", height: 1.6, count: 2 },
  ];
  const plan = createPlanner().plan(changed(readSample("crooked-strip"), "trellis.wires", wires));
  const side = rowSide(plan, plan.rows?.rows[0]?.id ?? "");
  const structure = plan.trellis?.blocks[0];
  expect(structure?.endPost.top_m).toBeGreaterThan(1.6);
  const standing = (kind: string) =>
    new Set(side?.posts.filter((post) => post.kind === kind).map(({ height_m, depth_m }) => `${height_m} ${depth_m}`));
  expect([...standing("end")]).toEqual([`${structure?.endPost.top_m} ${structure?.endPost.depth_m}`]);
  expect([...standing("line")]).toEqual([`${structure?.linePost.top_m} ${structure?.linePost.depth_m}`]);
  expect(side?.stakes.every(({ height_m }) => height_m === structure?.stake?.top_m)).toBe(true);
  expect(side?.vines.every(({ height_m }) => height_m === 0.9)).toBe(true);
  expect(side?.hose?.height_m).toBe(0.4);
});

test("a row that meets the water at its end has its hose from there", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  const flipped = {
    ...plan,
    mainline: { job: null, route: null, waterEnd: plan.rows?.rows.map(() => "end" as const) ?? [] },
  };
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

function sideOf(project: Project, row = "5") {
  const side = rowSide(createPlanner().plan(project), row);
  if (!side) throw new Error(`row ${row} has no side`);
  return side;
}

test("a post that leans out carries its wires beyond the row, by the cotangent of its angle", () => {
  const side = sideOf(
    changed(readSample("acre-with-notch"), "trellis.endAssembly", {
      kind: "leaning",
      postAngle: 60,
      leanDirection: "out",
    }),
  );
  const out = 1 / Math.tan(Math.PI / 3);
  const [start, end] = [side.posts[0], side.posts.at(-1)];
  expect(start?.lean).toBeCloseTo(-out, nanometre);
  expect(end?.lean).toBeCloseTo(out, nanometre);
  for (const { height_m, supports_m } of side.wires) {
    expect(supports_m[0]).toBeCloseTo(-height_m * out, nanometre);
    expect(supports_m.at(-1)).toBeCloseTo(side.length_m + height_m * out, nanometre);
  }
  expect(side.ends[0]?.tie?.from_m).toBeCloseTo(-Number(side.ends[0]?.tie?.fromHeight_m) * out, nanometre);
});

test("a post that leans over the row holds its wires inside it", () => {
  const side = sideOf(
    changed(readSample("acre-with-notch"), "trellis.endAssembly", {
      kind: "leaning",
      postAngle: 60,
      leanDirection: "in",
    }),
  );
  expect(side.posts[0]?.lean).toBeGreaterThan(0);
  for (const { supports_m } of side.wires) expect(supports_m[0]).toBeGreaterThan(0);
});

test("anchors stand outside the row, and the drawing reaches to them", () => {
  const out_m = 1.8288;
  const side = sideOf(changed(readSample("acre-with-notch"), "rows.anchorOut", "6 ft"));
  expect(side.ends.map(({ tie }) => tie?.to_m)).toEqual([-out_m, side.length_m + out_m]);
  expect(side.from_m).toBe(-out_m);
  expect(side.to_m).toBe(side.length_m + out_m);
});

test("an H-brace has a second post, a rail at its height, and a wire from that post's head to the end post's foot", () => {
  const side = sideOf(
    changed(readSample("acre-with-notch"), "trellis.endAssembly", {
      kind: "h-brace",
      braceHeight: 1,
      braceLength: 2.4,
    }),
  );
  expect(side.posts.filter(({ kind }) => kind === "brace").map(({ station_m }) => station_m)).toEqual([
    2.4,
    side.length_m - 2.4,
  ]);
  expect(side.ends[0]).toMatchObject({
    tie: null,
    brace: { from_m: 0, fromHeight_m: 1, to_m: 2.4, toHeight_m: 1 },
    braceWire: { from_m: 2.4, fromHeight_m: 1, to_m: 0, toHeight_m: 0 },
  });
});

test("the strut of an inside brace stands on the ground inside the row, tied back along the ground; that of a slant brace is not", () => {
  const settings = { braceHeight: 1, braceLength: 2 };
  const inside = sideOf(
    changed(readSample("acre-with-notch"), "trellis.endAssembly", { kind: "inside-brace", ...settings }),
  );
  const slant = sideOf(
    changed(readSample("acre-with-notch"), "trellis.endAssembly", { kind: "slant-brace", ...settings }),
  );
  expect(inside.ends[0]?.brace).toEqual({ from_m: 0, fromHeight_m: 1, to_m: 2, toHeight_m: 0 });
  expect(inside.ends[0]?.braceWire).toEqual({ from_m: 2, fromHeight_m: 0, to_m: 0, toHeight_m: 0 });
  expect(slant.ends[0]?.braceWire).toBeNull();
});

test("sag goes with the square of the bay, and the drawn sag keeps clear of the wire under it and of the ground", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  const loads = plan.trellis?.loads.blocks[0]?.wires ?? [];
  const side = sideOf(readSample("acre-with-notch"));
  side.wires.forEach((wire, w) => {
    wire.sags_m.forEach((sag_m, i) => {
      const bay_m = Number(wire.supports_m[i + 1]) - Number(wire.supports_m[i]);
      expect(sag_m).toBeCloseTo(Number(loads[w]?.sag_m) * (bay_m / Number(loads[w]?.bay_m)) ** 2, nanometre);
    });
    const below_m = Math.max(0, ...side.wires.map(({ height_m }) => height_m).filter((each) => each < wire.height_m));
    expect(side.sagFactor * Math.max(...wire.sags_m)).toBeLessThan(wire.height_m - below_m);
  });
  expect(side.sagFactor).toBeGreaterThan(1);
});

test("a row that does not exist has no side", () => {
  expect(rowSide(createPlanner().plan(readSample("acre-with-notch")), "nowhere")).toBeNull();
});
