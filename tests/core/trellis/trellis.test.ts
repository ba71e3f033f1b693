import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import type { Block, EndAssemblySettings, TrellisSettings } from "../../../src/core/project/project.ts";
import type { Rows } from "../../../src/core/rows/rows.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { createWire } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

const gripper = { kind: "gripper", allowance_m: 0.75 } as const;
const ends = { tieOffStart: gripper, tieOffEnd: gripper };
const millimetre = 3;

function createOwn(change: Partial<TrellisSettings>, rows: Partial<Block["rows"]> = {}): Block {
  const usual = createBlock();
  return createBlock({ rows: { ...usual.rows, ...rows }, trellis: { ...usual.trellis, ...change } });
}

function ending(change: Partial<EndAssemblySettings>): Pick<TrellisSettings, "endAssembly"> {
  return { endAssembly: { ...createBlock().trellis.endAssembly, ...change } };
}

function laid(rows: Rows, ...blocks: readonly Block[]) {
  const outcome = trellis(rows, flatGround, blocks);
  if (!outcome.ok) throw new Error("the trellis is not laid");
  return outcome.value;
}

function partsOf(
  block: Block,
  sketch: { readonly length_m: number; readonly linePosts?: number } = { length_m: 30 },
): Record<string, number> {
  const [row] = laid(createRows(sketch), block).rows;
  return Object.fromEntries((row?.parts ?? []).map(({ part, quantity }) => [part.article, quantity]));
}

describe("wire of a row", () => {
  test("wire follows the ground, and a loop takes its own allowance", () => {
    const loop = createWire({ tieOffStart: gripper, tieOffEnd: { kind: "loop", allowance_m: 1 } });
    const { rows } = laid(createRows({ length_m: 100, groundLength_m: 101.2 }), createOwn({ wires: [loop] }));
    expect(rows[0]?.runs[0]?.length_m).toBeCloseTo(102.95, 9);
  });

  test("a loop goes twice round the post: 0.998 m on one of 5 in", () => {
    const loop = createWire({ tieOffStart: gripper, tieOffEnd: { kind: "loop", allowance_m: null } });
    const block = createOwn({ wires: [loop], endPost: { ...createBlock().trellis.endPost, diameter_mm: 127 } });
    expect(laid(createRows({ length_m: 30 }), block).blocks[0]?.wires[0]?.tieOffEnd_m).toBeCloseTo(0.998, millimetre);
  });

  test("wire is told apart by purpose, and a purpose that a block has none of is not there", () => {
    const { rows, wire_m } = laid(createRows({ length_m: 98.5 }, { length_m: 48.5 }), createBlock());
    expect(rows[0]?.wire_m).toEqual({ drip: 100, fruiting: 200 });
    expect(wire_m).toEqual({ drip: 150, fruiting: 300 });
  });

  test("two diameters of one purpose are bought apart", () => {
    const wires = [
      createWire({ height_m: 0.9, diameter_mm: 2.5, ...ends }),
      createWire({ height_m: 1.1, diameter_mm: 2, count: 2, ...ends }),
    ];
    expect(laid(createRows({ length_m: 98.5 }, { length_m: 48.5 }), createOwn({ wires })).wires).toEqual([
      { article: "wire-2.5mm", purposes: ["fruiting"], diameter_mm: 2.5, length_m: 150, runs: 2, longestRun_m: 100 },
      { article: "wire-2mm", purposes: ["fruiting"], diameter_mm: 2, length_m: 300, runs: 4, longestRun_m: 100 },
    ]);
  });

  test("steel of another class or coating is another article", () => {
    const wires = [createWire({ tensile: "grade-200", coating: "class-3" }), createWire({ tensile: "low-carbon" })];
    expect(laid(createRows({ length_m: 30 }), createOwn({ wires })).wires).toHaveLength(2);
  });

  test("a row of two blocks takes the wires of its own block", () => {
    const rows = createRows({ length_m: 98.5, block: "west" }, { length_m: 98.5, block: "east" });
    const [first] = rows.blocks;
    if (first === undefined) throw new Error("rows without a block");
    const both = { ...rows, blocks: ["west", "east"].map((block) => ({ ...first, block })) };
    const west = createBlock({ id: "west", trellis: { ...createBlock().trellis, wires: [] } });
    const result = laid(both, west, createBlock({ id: "east" }));
    expect(result.rows.map((row) => row.wire_m)).toEqual([{}, { drip: 100, fruiting: 200 }]);
  });

  test("posts that lean out lengthen the upper wires most, posts that lean in shorten them", () => {
    const lean = (leanDirection: "out" | "in") => {
      const block = createOwn(ending({ kind: "leaning", postAngle_deg: 60, leanDirection }));
      return laid(createRows({ length_m: 50 }), block).rows[0]?.runs.map(({ supported_m }) => supported_m) ?? [];
    };
    const [, low = 0, high = 0] = lean("out");
    expect(low).toBeCloseTo(50 + (2 * 0.9) / Math.tan(Math.PI / 3), 9);
    expect(high).toBeGreaterThan(low);
    expect(lean("in")[2]).toBeLessThan(50);
  });

  test("leaning farther out never shortens a wire, nor does hanging it higher", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 45, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (angle_deg, more_deg, height_m, more_m) => {
          const run = (postAngle_deg: number, at_m: number) =>
            laid(
              createRows({ length_m: 40 }),
              createOwn({
                wires: [createWire({ height_m: at_m, ...ends })],
                ...ending({ kind: "leaning", postAngle_deg }),
              }),
            ).rows[0]?.runs[0]?.length_m ?? Number.NaN;
          const usual_m = run(angle_deg, height_m);
          expect(run(Math.max(40, angle_deg - more_deg), height_m)).toBeGreaterThanOrEqual(usual_m - 1e-9);
          expect(run(angle_deg, height_m + more_m)).toBeGreaterThanOrEqual(usual_m - 1e-9);
        },
      ),
      { seed: 40, numRuns: 60 },
    );
  });
});

describe("what holds wire on posts and stakes", () => {
  test("every stake takes a clip on every fruiting wire, pairs counted twice, and none on the drip wire", () => {
    const wires = [
      createWire({ purpose: "drip", height_m: 0.45 }),
      createWire({ height_m: 0.9 }),
      createWire({ height_m: 1.1, count: 2 }),
    ];
    expect(laid(createRows({ length_m: 30, vines: 12 }), createOwn({ wires })).rows[0]?.stakeClips).toBe(36);
  });

  test("wood takes a staple for every wire on every post, and one at each end", () => {
    expect(partsOf(createBlock(), { length_m: 30, linePosts: 4 }).staple).toBe(3 * (4 + 2));
  });

  test("posts with notches take wire clips, drilled ones nothing, and end posts eye bolts if they are set", () => {
    const { endPost, linePost } = createBlock().trellis;
    const held = (line: "notch" | "hole", end: "eye-bolt" | "hole") =>
      partsOf(createOwn({ linePost: { ...linePost, holds: line }, endPost: { ...endPost, holds: end } }), {
        length_m: 30,
        linePosts: 4,
      });
    expect(held("notch", "eye-bolt")).toMatchObject({ "wire-clip": 12, "eye-bolt": 6 });
    expect(Object.keys(held("hole", "hole"))).not.toEqual(expect.arrayContaining(["wire-clip"]));
    expect(held("hole", "hole").staple).toBeUndefined();
  });

  test("a movable pair hangs on two hooks a line post and takes no staple there", () => {
    const pair = createWire({ purpose: "foliage", height_m: 1.3, count: 2, isMovable: true });
    expect(partsOf(createOwn({ wires: [pair] }), { length_m: 30, linePosts: 4 })).toMatchObject({
      "wire-hook": 8,
      staple: 4,
    });
  });

  test("grippers, sleeves and tensioners are counted by wire and end", () => {
    const wire = createWire({
      count: 2,
      tensioners: 1,
      tieOffStart: gripper,
      tieOffEnd: { kind: "crimp", allowance_m: null },
    });
    expect(partsOf(createOwn({ wires: [wire] }))).toMatchObject({ gripper: 2, "crimp-sleeve": 4, tensioner: 2 });
  });
});

describe("posts", () => {
  test("the shortest length that is sold and reaches is taken, what is left over goes into the ground", () => {
    const { endPost } = createBlock().trellis;
    const block = createOwn({
      endPost: { ...endPost, above_m: 0.1, embedment_m: 0.9 },
      postLengths_m: [1.8, 2.4, 3],
      wires: [createWire({ height_m: 1.3 })],
    });
    const post = laid(createRows({ length_m: 30 }), block).blocks[0]?.endPost;
    expect(post).toMatchObject({ article: "end-post-2.4m", length_m: 2.4 });
    expect(post?.depth_m).toBeCloseTo(2.4 - 1.4, 9);
  });

  test("frost that goes deeper than the post was to stand makes it longer", () => {
    const depth = (frostDepth_m: number | null) =>
      laid(createRows({ length_m: 30 }), createOwn({ frostDepth_m })).blocks[0]?.linePost.depth_m ?? 0;
    expect(depth(null)).toBeLessThan(1.2);
    expect(depth(1.2)).toBeGreaterThanOrEqual(1.2);
  });

  test("wire heights go to the nearest notch, never under the lowest", () => {
    const { linePost } = createBlock().trellis;
    const block = createOwn({
      linePost: { ...linePost, holds: "notch", firstNotch_m: 0.3, notchPitch_m: 0.1 },
      wires: [createWire({ height_m: 0.1 }), createWire({ height_m: 0.94 })],
    });
    const heights = laid(createRows({ length_m: 30 }), block).blocks[0]?.wires.map(({ height_m }) => height_m) ?? [];
    expect(heights[0]).toBeCloseTo(0.3, 9);
    expect(heights[1]).toBeCloseTo(0.9, 9);
  });
});

describe("ends of rows", () => {
  test("a tied-back end takes anchor, tie wire in all its strands, and a gripper, at both ends", () => {
    const block = createOwn(ending({ kind: "vertical", tieHeight_m: 1.5, tieStrands: 2 }), { anchorOut_m: 2 });
    const parts = partsOf(block);
    expect(parts).toMatchObject({ anchor: 2, "tie-gripper": 2 });
    // 3-4-5: 2.5 m a strand, and 1.2 m of fastening.
    const [tie] = Object.entries(parts).filter(([article]) => article.startsWith("tie-wire"));
    expect(tie?.[1]).toBeCloseTo(2 * (2 * 2.5 + 1.2), 9);
  });

  test("a buried anchor is another article than one that is screwed in", () => {
    const parts = partsOf(createOwn(ending({ kind: "buried-anchor" })));
    expect(parts).toMatchObject({ "buried-anchor": 2 });
    expect(parts.anchor).toBeUndefined();
  });

  test("an H-brace takes brace post, rail, two pins and a doubled diagonal", () => {
    const [row] = laid(
      createRows({ length_m: 30 }),
      createOwn(ending({ kind: "h-brace", braceHeight_m: 1.5, braceLength_m: 2 })),
    ).rows;
    const counts = Object.fromEntries((row?.parts ?? []).map(({ part, quantity }) => [part.kind, quantity]));
    expect(counts).toMatchObject({ "end-post": 2, "brace-post": 2, "brace-rail": 2, "brace-pin": 4, "tie-gripper": 2 });
    expect(counts["brace-wire"]).toBeCloseTo(2 * (2 * 2.5 + 1.2), 9);
    expect(counts.anchor).toBeUndefined();
  });

  test("wires are held on the brace posts they meet, by staples even where end posts have eye bolts", () => {
    const { endPost } = createBlock().trellis;
    const held = (braceHeight_m: number) =>
      partsOf(
        createOwn({
          ...ending({ kind: "h-brace", braceHeight_m }),
          endPost: { ...endPost, holds: "eye-bolt", above_m: 0.05 },
          wires: [createWire({ height_m: 0.9 }), createWire({ height_m: 1.3, isMovable: true, count: 2 })],
        }),
      );
    expect(held(1)).toMatchObject({ staple: 2, "eye-bolt": 6 });
    expect(held(1)["wire-hook"]).toBeUndefined();
    expect(held(1.3)).toMatchObject({ staple: 2, "wire-hook": 4 });
  });

  test("rails and struts are bought in the lengths that posts are sold in", () => {
    const sold = { postLengths_m: [2.4, 3] };
    const rails = (braceLength_m: number) =>
      Object.keys(partsOf(createOwn({ ...sold, ...ending({ kind: "h-brace", braceHeight_m: 1.2, braceLength_m }) })));
    expect(rails(2.5)).toContain("brace-rail-3m");
    expect(rails(3.2)).toContain("brace-rail-3.2m");
  });

  test("a slant brace stands on a foot; an inside brace is held by a ground wire besides", () => {
    const slant = partsOf(createOwn(ending({ kind: "slant-brace", braceHeight_m: 1.5, braceLength_m: 2 })));
    const inside = partsOf(createOwn(ending({ kind: "inside-brace", braceHeight_m: 1.5, braceLength_m: 2 })));
    for (const parts of [slant, inside])
      expect(parts).toMatchObject({ "brace-strut-2.6m": 2, "brace-pin": 2, "brace-foot": 2 });
    expect(Object.keys(slant).some((article) => article.startsWith("tie-wire"))).toBe(false);
    const [ground] = Object.entries(inside).filter(([article]) => article.startsWith("tie-wire"));
    expect(ground?.[1]).toBeCloseTo(2 * (2 * 2 + 1.2), 9);
  });

  test("a single post takes nothing but itself", () => {
    const parts = partsOf(createOwn({ ...ending({ kind: "single" }), wires: [] }));
    expect(Object.entries(parts).map(([article, count]) => [article.replace(/-[\d.]+m$/, ""), count])).toEqual([
      ["end-post", 2],
    ]);
  });

  test("concrete fills the hole round the post, in whole bags a post", () => {
    const { endPost } = createBlock().trellis;
    const block = createOwn({
      ...ending({ kind: "vertical", concreteHole_m: 0.3, concreteBag_l: 12.5 }),
      endPost: { ...endPost, diameter_mm: 120, length_m: 2.2, above_m: 0.1 },
      wires: [createWire({ height_m: 1.2 })],
    });
    // pi/4 (0.3^2 - 0.12^2) 0.9 m = 53.4 L, which are 5 bags.
    expect(partsOf(block)["concrete-bag"]).toBe(10);
  });

  test("totals of wire are the sums over rows and runs, whatever the ends", () => {
    const kinds = ["vertical", "leaning", "h-brace", "slant-brace", "inside-brace", "buried-anchor", "single"] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.array(fc.double({ min: 16, max: 300, noNaN: true }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: 3 }),
        (kind, lengths_m, count) => {
          const wires = [
            createWire({ count, diameter_mm: 2.5 }),
            createWire({ purpose: "drip", height_m: 0.4, diameter_mm: 2 }),
            createWire({ purpose: "foliage", height_m: 1.5, diameter_mm: 2, count: 2, isMovable: true }),
          ];
          const result = laid(
            createRows(...lengths_m.map((length_m) => ({ length_m }))),
            createOwn({ wires, ...ending({ kind }) }),
          );
          const cut_m = result.rows.reduce(
            (sum, { runs }) => sum + runs.reduce((own, run) => own + run.count * run.length_m, 0),
            0,
          );
          const byArticle_m = result.wires.reduce((sum, { length_m }) => sum + length_m, 0);
          const byPurpose_m = Object.values(result.wire_m).reduce((sum, length_m) => sum + length_m, 0);
          expect(Math.abs(byArticle_m - cut_m)).toBeLessThan(1e-6);
          expect(Math.abs(byPurpose_m - cut_m)).toBeLessThan(1e-6);
          expect(result.wires.reduce((sum, { runs }) => sum + runs, 0)).toBe(lengths_m.length * (count + 3));
        },
      ),
      { seed: 41, numRuns: 50 },
    );
  });
});
