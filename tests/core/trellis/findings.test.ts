import { describe, expect, test } from "vitest";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import type { Block, EndAssemblySettings, PostSettings, TrellisSettings } from "../../../src/core/project/project.ts";
import { blockTrellis } from "../../../src/core/trellis/block-trellis.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { structureFindings } from "../../../src/core/trellis/structure-findings.ts";
import { text } from "../../../src/core/units.ts";
import { createRowSettings, createTrellisSettings, createWire } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

/** A tie-back at 1 m to an anchor at 1.5 m, 34 degrees from the ground: nothing to say. */
const quiet: Partial<EndAssemblySettings> = { kind: "vertical", tieHeight_m: 1 };
const rows = createRows({ length_m: 60, linePosts: 8 }, { length_m: 40, linePosts: 5 });

function createOwn(
  end: Partial<EndAssemblySettings> = quiet,
  change: Partial<TrellisSettings> = {},
  own: Partial<Block["rows"]> = {},
): Block {
  const usual = createTrellisSettings();
  return createBlock({
    rows: createRowSettings(own),
    trellis: { ...usual, endAssembly: { ...usual.endAssembly, ...quiet, ...end }, ...change },
  });
}

function post(change: Partial<PostSettings>): PostSettings {
  return { ...createTrellisSettings().linePost, ...change };
}

function said(block: Block, over = rows): Readonly<Record<string, string>> {
  return Object.fromEntries(
    structureFindings(over, block, blockTrellis(block)).map(({ code, message }) => [code, text(message, "metric")]),
  );
}

test("a usual trellis has nothing to say, and neither has a block without rows", () => {
  expect(said(createOwn())).toEqual({});
  expect(said(createOwn({ kind: "single" }), createRows())).toEqual({});
});

test("what is said of the structure is among the plan's findings, once a block", () => {
  const outcome = trellis(rows, flatGround, [createOwn({ kind: "single" })]);
  expect(outcome.findings.filter(({ code }) => code === "trellis/single-post")).toHaveLength(1);
});

describe("wires and posts", () => {
  test("a wire that went to a notch is named with the height wished for and the one it got", () => {
    const block = createOwn(quiet, {
      linePost: post({ holds: "notch", firstNotch_m: 0.3, notchPitch_m: 0.1 }),
      wires: [createWire({ height_m: 0.94 }), createWire({ height_m: 1.2 })],
    });
    expect(said(block)).toEqual({
      "trellis/height-snapped": expect.stringMatching(/fruiting wire of 0\.94 m hangs at 0\.90? m\./),
    });
  });

  test("two wires that share a notch are told; in staples they may", () => {
    const wires = [createWire({ height_m: 0.92 }), createWire({ height_m: 0.88 })];
    const notched = post({ holds: "notch", firstNotch_m: 0.3, notchPitch_m: 0.1 });
    expect(said(createOwn(quiet, { linePost: notched, wires }))).toHaveProperty(["trellis/wires-share-height"]);
    expect(said(createOwn(quiet, { wires }))).not.toHaveProperty(["trellis/wires-share-height"]);
  });

  test("posts longer than any that is sold are told", () => {
    const wires = [createWire({ height_m: 3.6 })];
    expect(said(createOwn(quiet, { wires }))["trellis/longer-than-sold"]).toBeDefined();
  });

  test("rails and struts longer than any post that is sold are told", () => {
    const long = { braceHeight_m: 1, braceLength_m: 5 } as const;
    expect(said(createOwn({ kind: "h-brace", ...long }))["trellis/longer-than-sold"]).toContain("rails have to be 5");
    expect(said(createOwn({ kind: "inside-brace", ...long }))["trellis/longer-than-sold"]).toContain("struts");
  });

  test("a stated length that leaves a post shallow, or does not reach the ground, is told", () => {
    const shallow = createOwn(quiet, { linePost: post({ length_m: 1.4 }) });
    expect(said(shallow)["trellis/too-shallow"]).toContain("stand only");
    const hanging = createOwn(quiet, { linePost: post({ length_m: 0.8 }) });
    expect(said(hanging)["trellis/too-shallow"]).toContain("do not reach the ground");
  });

  test("frost that governs the depth is noted, frost that does not is not", () => {
    expect(said(createOwn(quiet, { frostDepth_m: 1.1 }))["trellis/frost-governs"]).toContain("1.1");
    expect(said(createOwn(quiet, { frostDepth_m: 0.4 }))).toEqual({});
  });

  test("a hand-wrapped loop of stiff high-tensile wire is told, a crimped end is not, nor soft wire", () => {
    const loop = createWire({ diameter_mm: 2.5, tensile: "grade-200" });
    expect(said(createOwn(quiet, { wires: [loop] }))["trellis/stiff-loop"]).toContain("wrapped loop");
    const crimped = { ...loop, tieOffEnd: { kind: "crimp", allowance_m: null } } as const;
    expect(said(createOwn(quiet, { wires: [crimped] }))).toEqual({});
    expect(said(createOwn(quiet, { wires: [{ ...loop, tensile: "low-carbon" }] }))).toEqual({});
  });

  test("12.5 gauge, 2.51 mm, counts as stiff", () => {
    const loop = createWire({ diameter_mm: 2.5146, tensile: "grade-180" });
    expect(said(createOwn(quiet, { wires: [loop] }))).toHaveProperty(["trellis/stiff-loop"]);
  });
});

describe("ends of rows", () => {
  test("an anchor under the leaning post is told instead of its angle", () => {
    const block = createOwn({ kind: "leaning", postAngle_deg: 45, tieHeight_m: 1.6 });
    expect(Object.keys(said(block))).toContain("trellis/anchor-under-post");
    expect(Object.keys(said(block))).not.toContain("trellis/tie-angle");
  });

  test("a tie-back under 25 or over 65 degrees is told with what to do about it", () => {
    expect(said(createOwn({ tieHeight_m: 0.5 }))).toHaveProperty(["trellis/tie-angle"]);
    expect(said(createOwn({ tieHeight_m: 1.4 }, {}, { anchorOut_m: 0.5 }))).toHaveProperty(["trellis/tie-angle"]);
    expect(said(createOwn({ tieHeight_m: 1.5 }))).toEqual({});
  });

  test("rows whose first bay is too short for the brace are named", () => {
    const block = createOwn({ kind: "h-brace", braceHeight_m: 1, braceLength_m: 4 });
    const near = said(block, createRows({ length_m: 60, linePosts: 8 }, { length_m: 60 }));
    expect(near["trellis/bay-shorter-than-brace"]).toContain("row 1");
    expect(near["trellis/bay-shorter-than-brace"]).not.toContain("2");
  });

  test("single posts with tensioned wire are warned of, long rows by name", () => {
    const single = createOwn({ kind: "single" });
    expect(said(single)["trellis/single-post"]).toContain("row 1 and 2");
    expect(said(single, createRows({ length_m: 12 }))["trellis/single-post"]).toContain("stand alone");
    const loose = createOwn({ kind: "single" }, { wires: [createWire({ tension_n: 0 })] });
    expect(said(loose)).toEqual({});
  });

  test("anchors that take more than half of the headland are told, unless distances count to the anchor", () => {
    const far = { anchorOut_m: 1.8, headland_m: 3 };
    expect(said(createOwn(quiet, {}, far))).toHaveProperty(["trellis/ends-take-headland"]);
    expect(said(createOwn(quiet, {}, { ...far, distancesTo: "anchor" }))).toEqual({});
  });

  test("the top of a post that leans far out is told as well, though its anchor is near", () => {
    const near = { anchorOut_m: 1.2, headland_m: 3.2 };
    const high = { wires: [createWire({ height_m: 1.9 })] };
    const tied = { kind: "leaning", tieHeight_m: 1, postAngle_deg: 50 } as const;
    // The top is 2 m up and so 1.68 m out.
    const above = { ...high, endPost: post({ above_m: 0.1 }) };
    expect(said(createOwn(tied, above, near))["trellis/ends-take-headland"]).toContain("reach 1.68 m");
    expect(said(createOwn({ ...tied, leanDirection: "in" }, above, near))).not.toHaveProperty([
      "trellis/ends-take-headland",
    ]);
  });
});
