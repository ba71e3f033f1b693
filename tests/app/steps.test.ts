import { expect, test } from "vitest";
import { beginProject } from "../../src/app/commands/begin-project.ts";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { addWire, changeWire, removeWire } from "../../src/app/commands/change-wires.ts";
import { goToStep } from "../../src/app/commands/go-to-step.ts";
import { renameProject } from "../../src/app/commands/rename-project.ts";
import { takeBack } from "../../src/app/commands/take-back.ts";
import { current, nextSteps } from "../../src/app/history.ts";
import { createStore, type Store } from "../../src/app/store.ts";
import { readSample } from "../support/sample-plans.ts";

function createOpenStore(sample = "acre-with-notch"): Store {
  const store = createStore();
  beginProject(store, readSample(sample));
  return store;
}

function undoName(store: Store): string | null {
  return store.history.value ? nextSteps(store.history.value).undo : null;
}

function spacing(store: Store): number | undefined {
  return store.block.value?.rows.rowSpacing_m;
}

test("what was typed in one stay is taken back as one step, and nothing before it", () => {
  const store = createOpenStore();
  changeSetting(store, "rows.rowSpacing", 3, { name: "Row spacing 3 m", joins: "stay 1" });
  for (const typed of ["1", "12 f", "12 ft"]) {
    changeSetting(store, "rows.rowSpacing", typed, { name: `Row spacing ${typed}`, joins: "stay 2" });
  }
  expect(spacing(store)).toBeCloseTo(3.6576, 9);
  takeBack(store, "stay 2");
  expect(spacing(store)).toBe(3);
  // The same stay again has nothing left to take back.
  takeBack(store, "stay 2");
  expect(spacing(store)).toBe(3);
  expect(undoName(store)).toBe("Row spacing 3 m");
});

test("any step is gone to, and a step that does not exist changes nothing", () => {
  const store = createOpenStore();
  const start = store.project.value;
  changeSetting(store, "rows.rowSpacing", 3, { name: "Row spacing 3 m" });
  changeSetting(store, "rows.headland", 5, { name: "Headland 5 m" });
  goToStep(store, 0);
  expect(store.project.value).toBe(start);
  goToStep(store, 2);
  expect(undoName(store)).toBe("Headland 5 m");
  goToStep(store, 7);
  expect(undoName(store)).toBe("Headland 5 m");
});

test("a new name is a step of its own; the same or a blank one is none", () => {
  const store = createOpenStore();
  renameProject(store, "  Upper field ");
  expect(store.project.value?.name).toBe("Upper field");
  expect(undoName(store)).toBe("Rename to Upper field");
  renameProject(store, "Upper field");
  renameProject(store, "   ");
  expect(store.history.value?.steps).toHaveLength(2);
});

test("a wire is changed in a file that states none, and the others stay as they were", () => {
  const store = createOpenStore();
  const before = store.block.value?.trellis.wires ?? [];
  expect(changeWire(store, 1, "height", "1 m", { name: "Wire 2 height 1 m" })).toEqual([]);
  const after = store.block.value?.trellis.wires ?? [];
  expect(after.map(({ height_m }) => height_m)).toEqual(before.map(({ height_m }, i) => (i === 1 ? 1 : height_m)));
  expect(after.map(({ diameter_mm }) => diameter_mm)).toEqual(before.map(({ diameter_mm }) => diameter_mm));
});

test("wires that the file states keep the words they were stated in", () => {
  const store = createOpenStore();
  const stated = [
    { purpose: "drip", height: "16 in" },
    { purpose: "fruiting", height: "3 ft", diameter: "12 ga" },
  ];
  changeSetting(store, "trellis.wires", stated, { name: "Wires" });
  changeWire(store, 0, "height", "18 in", { name: "Wire 1 height 18 in" });
  const project = store.history.value ? current(store.history.value).project : null;
  expect(project?.document.tautrow?.trellis).toEqual({ wires: [{ purpose: "drip", height: "18 in" }, stated[1]] });
});

test("a wire is added over the highest one and taken out again", () => {
  const store = createOpenStore();
  const before = store.block.value?.trellis.wires ?? [];
  addWire(store);
  const added = store.block.value?.trellis.wires.at(-1);
  expect(added?.purpose).toBe("foliage");
  expect(added?.height_m).toBeGreaterThan(Math.max(...before.map(({ height_m }) => height_m)));
  removeWire(store, before.length);
  expect(store.block.value?.trellis.wires).toEqual(before);
  expect(undoName(store)).toBe("Take out a foliage wire");
});

test("of two blocks only the wires of the shown one change", () => {
  const store = createOpenStore("brook-and-two-blocks");
  const other = store.project.value?.blocks[1]?.trellis;
  changeWire(store, 0, "count", 2, { name: "Wire 1 number 2" });
  expect(store.project.value?.blocks[0]?.trellis.wires[0]?.count).toBe(2);
  expect(store.project.value?.blocks[1]?.trellis).toEqual(other);
});

test("a wire that makes no sense is refused and changes nothing", () => {
  const store = createOpenStore();
  const before = store.project.value;
  expect(changeWire(store, 0, "height", "40 ft", { name: "Wire 1 height 40 ft" })).not.toEqual([]);
  expect(store.project.value).toBe(before);
});
