import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { chooseBlock, chooseRow } from "../../src/app/commands/choose-row.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { sweepBearings } from "../../src/app/commands/sweep-bearings.ts";
import { turnRows } from "../../src/app/commands/turn-rows.ts";
import { createStore } from "../../src/app/store.ts";
import { withShownUnit } from "../../src/app/typed-quantity.ts";

function createOpenStore(sample: string) {
  const store = createStore();
  const file = new URL(`../../samples/${sample}/project.geojson`, import.meta.url);
  openProject(store, readFileSync(file, "utf8"), `${sample}.geojson`);
  return store;
}

describe("changing a setting", () => {
  test("the rows turn to a bearing and the plan follows", () => {
    const store = createOpenStore("acre-with-notch");
    const before = store.plan.value;
    expect(turnRows(store, 31.5)).toEqual([]);
    expect(store.plan.value).not.toBe(before);
    expect(store.plan.value?.rows?.blocks[0]?.bearing_deg).toBe(31.5);
  });

  test.each(["-8 ft", "0", "eight"])("a row spacing of %s is refused with a sentence and changes nothing", (typed) => {
    const store = createOpenStore("acre-with-notch");
    const before = store.project.value;
    const told = changeSetting(store, "rows.rowSpacing", typed);
    expect(told[0]?.message.length).toBeGreaterThan(0);
    expect(store.project.value).toBe(before);
  });

  test("what was typed stays in the project as it was typed", () => {
    const store = createOpenStore("acre-with-notch");
    expect(changeSetting(store, "rows.rowSpacing", "7 ft 6 in")).toEqual([]);
    expect(JSON.stringify(store.project.value?.document.tautrow)).toContain('"7 ft 6 in"');
    expect(store.block.value?.rows.rowSpacing_m).toBeCloseTo(2.286, 9);
  });

  test("with two blocks only the shown one is turned", () => {
    const store = createOpenStore("brook-and-two-blocks");
    const bearings = () => store.plan.value?.rows?.blocks.map(({ bearing_deg }) => bearing_deg);
    const [first, second] = bearings() ?? [];
    const other = store.project.value?.blocks[1]?.id ?? "";
    chooseBlock(store, other);
    turnRows(store, 77);
    expect(bearings()).toEqual([first, 77]);
    expect(second).not.toBe(77);
  });

  test("without a project nothing happens", () => {
    const store = createStore();
    expect(turnRows(store, 10)).toEqual([]);
    expect(store.project.value).toBeNull();
  });
});

describe("choosing", () => {
  test("a chosen row brings its block, an unknown one chooses none", () => {
    const store = createOpenStore("brook-and-two-blocks");
    const row = store.plan.value?.rows?.rows.find(({ block }) => block !== store.blockId.value);
    chooseRow(store, row?.id ?? null);
    expect(store.row.value).toBe(row?.id);
    expect(store.blockId.value).toBe(row?.block);
    chooseRow(store, "no such row");
    expect(store.row.value).toBeNull();
  });

  test("the bearing chart covers every degree of the shown block", () => {
    const store = createOpenStore("acre-with-notch");
    sweepBearings(store);
    expect(store.sweep.value?.points).toHaveLength(180);
    expect(store.sweep.value?.block).toBe(store.blockId.value);
  });
});

describe("a number typed alone", () => {
  test.each([
    ["8", "length", 2.4384, "us", "8 ft"],
    ["8.5", "length", 2.4, "metric", "8.5 m"],
    ["8 m", "length", 2.4384, "us", "8 m"],
    ["7' 6\"", "length", 2.4, "us", "7' 6\""],
    ["eight", "length", 2.4, "us", "eight"],
    ["24", "angle", 6, "us", "24 °"],
  ] as const)("%s as %s beside %d in %s units means %s", (typed, kind, inForce, units, meant) => {
    expect(withShownUnit(typed, kind, inForce, units)).toBe(meant);
  });
});
