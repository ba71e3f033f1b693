import { describe, expect, test } from "vitest";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import { type EndAssemblyKind, endAssemblyKinds } from "../../../src/core/project/project.ts";
import { articleAccount, runAccount, supportedAccount, wireAccount } from "../../../src/core/trellis/accounts.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import {
  partAccount,
  postDepthAccount,
  postLengthAccount,
  tieAngleAccount,
  tieWireAccount,
} from "../../../src/core/trellis/structure-accounts.ts";
import { createWire } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

const rows = createRows(
  { length_m: 98.5, groundLength_m: 99.1, linePosts: 12, vines: 40 },
  { length_m: 48.5, linePosts: 6, vines: 20 },
);
const closeTo = 9;

/** Wires that differ in height, thickness and both ends, on posts that differ from what is usual. */
function createMixed(kind: EndAssemblyKind) {
  const usual = createBlock().trellis;
  const loop = { kind: "loop", allowance_m: null } as const;
  const block = createBlock({
    trellis: {
      ...usual,
      wires: [
        createWire({ purpose: "drip", height_m: 0.45 }),
        createWire({ height_m: 0.9, count: 2, tieOffStart: loop }),
        createWire({ height_m: 1.5, diameter_mm: 2, tieOffEnd: { kind: "crimp", allowance_m: null } }),
        createWire({ purpose: "foliage", height_m: 1.7, count: 2, isMovable: true }),
      ],
      endAssembly: { ...usual.endAssembly, kind, postAngle_deg: 65, concreteHole_m: 0.3 },
      frostDepth_m: 0.7,
    },
  });
  const outcome = trellis(rows, flatGround, [block]);
  if (!outcome.ok) throw new Error("the trellis is not laid");
  const [structure] = outcome.value.blocks;
  if (structure === undefined) throw new Error("the block has no structure");
  return { block, laid: outcome.value, structure };
}

describe.each(endAssemblyKinds)("what is told of rows with ends of kind %s gives what is in the plan", (kind) => {
  const { block, laid, structure } = createMixed(kind);

  test("for the wire of every purpose and article", () => {
    for (const purpose of ["drip", "fruiting", "foliage"] as const)
      expect(wireAccount(rows, [block], purpose).value).toBeCloseTo(Number(laid.wire_m[purpose]), closeTo);
    expect(laid.wires).toHaveLength(2);
    for (const { article, length_m } of laid.wires)
      expect(articleAccount(rows, [block], article).value).toBeCloseTo(length_m, closeTo);
  });

  test("for every run of every row, with and without its tie-offs", () => {
    rows.rows.forEach((row, i) => {
      structure.wires.forEach((hung, w) => {
        const run = laid.rows[i]?.runs[w];
        expect(runAccount(row, block.trellis, w).value).toBeCloseTo(Number(run?.length_m), closeTo);
        expect(supportedAccount(row, hung).value).toBeCloseTo(Number(run?.supported_m), closeTo);
      });
    });
  });

  test("for every post and stake, as long and as deep as it is", () => {
    const { endPost, linePost, stake, frostDepth_m, postLengths_m, stakeLengths_m } = block.trellis;
    const told = [
      [structure.endPost, endPost, frostDepth_m, postLengths_m],
      [structure.linePost, linePost, frostDepth_m, postLengths_m],
      [structure.stake, stake, null, stakeLengths_m],
    ] as const;
    for (const [post, settings, frost_m, lengths_m] of told) {
      if (post === null) throw new Error("the block has no stakes");
      expect(postLengthAccount(post, settings, frost_m, lengths_m).value).toBeCloseTo(post.length_m, closeTo);
      expect(postDepthAccount(post).value).toBeCloseTo(post.depth_m, closeTo);
      const stated = postLengthAccount(post, { ...settings, length_m: 2.75 }, frost_m, lengths_m);
      expect(stated.value).toBe(2.75);
      const unsold = postLengthAccount(post, settings, frost_m, []);
      expect(unsold.value).toBeLessThanOrEqual(post.length_m);
    }
  });

  test("for every part of the rows", () => {
    const articles = [...new Set(laid.rows.flatMap(({ parts }) => parts.map(({ part }) => part.article)))];
    expect(articles.length).toBeGreaterThan(4);
    for (const article of articles) {
      const inRows = laid.rows.flatMap(({ parts }) => parts.filter(({ part }) => part.article === article));
      const sum = inRows.reduce((total, { quantity }) => total + quantity, 0);
      expect(partAccount(rows, laid, article).value).toBeCloseTo(sum, closeTo);
    }
  });

  test("for its tie-back, if it has one", () => {
    const { tie } = structure.end;
    const tieWire = laid.rows[0]?.parts.find(({ part }) => part.kind === "tie-wire");
    expect(tie === null).toBe(tieWire === undefined);
    if (tie === null) return;
    expect(tieWireAccount(tie).value).toBeCloseTo(Number(tieWire?.quantity) / 2, closeTo);
    expect(tieAngleAccount(tie).value).toBeCloseTo(tie.angle_deg, closeTo);
  });
});
