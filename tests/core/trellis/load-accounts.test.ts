import { describe, expect, test } from "vitest";
import type { Account } from "../../../src/core/account.ts";
import { elevationOf, flatGround } from "../../../src/core/ground/elevation.ts";
import { endAssemblyKinds } from "../../../src/core/project/project.ts";
import { dipAccount, endLoadAccounts } from "../../../src/core/trellis/end-load-accounts.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { wireLoadAccounts } from "../../../src/core/trellis/load-accounts.ts";
import { text } from "../../../src/core/units.ts";
import { at, createTrellisSettings, createWire, testFrame } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

/** Relative: the same numbers in another order. */
const near = 1e-9;

function expectGives(account: Account | null, shown: number): void {
  if (account?.value == null) throw new Error("there is no account");
  expect(Math.abs(account.value - shown)).toBeLessThanOrEqual(near * Math.max(1, Math.abs(shown)));
  for (const units of ["metric", "us"] as const) {
    expect(text(account.formula, units)).toMatch(/^[A-Z].*\.$/s);
    for (const { name, value } of account.inputs)
      expect(`${name}: ${text(value, units)}`).not.toMatch(/: $|NaN|undefined/);
  }
  expect(account.source).not.toBe("");
}

const wires = [
  createWire({ purpose: "drip", height_m: 0.5, count: 2, tension_n: 250, coating: "class-1" }),
  createWire({ height_m: 0.9, tensile: "grade-180", coating: "class-3", tension_n: 700 }),
  createWire({ purpose: "foliage", height_m: 1.4, count: 2, isMovable: true, tension_n: 150 }),
  createWire({ height_m: 1.7, tension_n: 0 }),
];
const rows = createRows({ length_m: 82, linePosts: 9 }, { length_m: 47, linePosts: 5 });

function laid(change: Parameters<typeof createTrellisSettings>[0] = {}, elevation = flatGround) {
  const block = createBlock({ trellis: createTrellisSettings({ wires, cropPerVine_kg: 5, ...change }) });
  const done = trellis(rows, elevation, [block]);
  if (!done.ok) throw new Error("the trellis is not laid");
  const [structure, loads] = [done.value.blocks[0], done.value.loads.blocks[0]];
  if (structure === undefined || loads === undefined) throw new Error("the block has no loads");
  return { block, structure, loads, dips: done.value.loads.dips };
}

describe("every number of the loads comes about as its account says", () => {
  test.each(wires.map(({ purpose }, i) => ({ purpose, i })))("$purpose wire $i", ({ i }) => {
    const { block, structure, loads } = laid();
    const [hung, own] = [structure.wires[i], loads.wires[i]];
    if (hung === undefined || own === undefined) throw new Error("there is no such wire");
    const { check, ...numbers } = own;
    const shown = { ...numbers, drop_m: check.drop_m };
    const of = { hung, loads: own, block };
    for (const [name, accountOf] of Object.entries(wireLoadAccounts)) {
      const [, value] = Object.entries(shown).find(([each]) => each === name) ?? [];
      expectGives(accountOf(of), value ?? Number.NaN);
    }
    expect(Object.keys(wireLoadAccounts).sort()).toEqual(Object.keys(shown).sort());
  });

  test.each(endAssemblyKinds.map((kind) => [kind] as const))("the end of a row of kind %s", (kind) => {
    const own = laid({ endAssembly: { ...createTrellisSettings().endAssembly, kind } });
    for (const [name, accountOf] of Object.entries(endLoadAccounts)) {
      const [, value] = Object.entries(own.loads.end).find(([each]) => each === name) ?? [];
      if (value === null) expect(accountOf(own)).toBeNull();
      else expectGives(accountOf(own), value ?? Number.NaN);
    }
    expect(Object.keys(endLoadAccounts).sort()).toEqual(Object.keys(own.loads.end).sort());
  });

  test("an end post that leans over the row", () => {
    const usual = createTrellisSettings().endAssembly;
    const own = laid({ endAssembly: { ...usual, kind: "leaning", leanDirection: "in", postAngle_deg: 75 } });
    expectGives(endLoadAccounts.tie_n(own), Number(own.loads.end.tie_n));
    expectGives(endLoadAccounts.postThrust_n(own), own.loads.end.postThrust_n);
  });

  test("a post in a dip", () => {
    const spots = [-5, 41, 90].flatMap((y) =>
      [-10, 40].map((x) => ({ key: `${x} ${y}`, name: null, at: at([x, y]), height_m: 0.06 * Math.abs(y - 41) })),
    );
    const { dips, loads } = laid({}, elevationOf(spots, testFrame).elevation);
    expect(dips.length).toBeGreaterThan(0);
    for (const dip of dips) expectGives(dipAccount(dip, loads.end.coldestPull_n), dip.uplift_n);
  });
});
