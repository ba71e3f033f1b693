import { describe, expect, it } from "vitest";
import { beginProject } from "../../src/app/commands/begin-project.ts";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { firstRunPage } from "../../src/app/drip/first-run-page.ts";
import { rowRuns } from "../../src/app/drip/row-runs.ts";
import { leastEven, wholeWatering } from "../../src/app/drip/whole-watering.ts";
import { listAsWritten, moved, withEntryMember } from "../../src/app/drip/written-list.ts";
import { createStore } from "../../src/app/store.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { firstRunSheet } from "../../src/core/sheets/first-run.ts";
import { readSample } from "../support/sample-plans.ts";

const plan = createPlanner().plan(readSample("acre-with-notch"));
const [job, watering] = [plan.watering?.job, plan.watering?.watering];
if (!job || !watering) throw new Error("the sample is watered");

describe("lists of settings", () => {
  it("stay as the file writes them, units and all, when one entry is changed", () => {
    const store = createStore();
    beginProject(store, readSample("acre-with-notch"));
    const written = listAsWritten(store, "water.pump", []);
    expect(written[1]).toEqual({ flow: "3 gal/min", pressure: "56 psi" });
    const changed = written.map((each, i) => (i === 1 ? withEntryMember(each, "pressure", "57 psi") : each));
    expect(changeSetting(store, "water.pump", changed)).toEqual([]);
    expect(listAsWritten(store, "water.pump", [])).toEqual(changed);
    expect(store.project.value?.water.pump[1]?.pressure_kpa).toBeCloseTo(57 * 6.894757, 4);
  });

  it("are those in force where the file states none", () => {
    const store = createStore();
    beginProject(store, readSample("acre-with-notch"));
    expect(listAsWritten(store, "water.headWorks", [{ kind: "filter" }])).toEqual([{ kind: "filter" }]);
  });

  it("have an entry moved to another place, and none beyond their ends", () => {
    expect(moved(["a", "b", "c"], 2, 0)).toEqual(["c", "a", "b"]);
    expect(moved(["a", "b", "c"], 0, 1)).toEqual(["b", "a", "c"]);
    expect(moved(["a", "b", "c"], 0, -1)).toEqual(["a", "b", "c"]);
    expect(moved(["a", "b", "c"], 2, 3)).toEqual(["a", "b", "c"]);
  });
});

describe("the words of sets", () => {
  it("name the rows of a set from first to last, gaps told", () => {
    const id = (lateral: number) => plan.rows?.rows[job.laterals.row[lateral] ?? -1]?.id;
    expect(rowRuns(plan, job, [3, 1, 2])).toBe(`${id(1)} to ${id(3)}`);
    expect(rowRuns(plan, job, [0, 1, 5])).toBe(`${id(0)}, ${id(1)} and ${id(5)}`);
  });

  it("add all sets up: the largest flow, the least to spare, the least even block, the longest month", () => {
    const whole = wholeWatering(watering);
    expect(whole?.most_lph).toBe(Math.max(...watering.sets.map(({ flow_lps }) => 3600 * flow_lps)));
    expect(whole?.spare_kpa).toBeCloseTo(9.80665 * Math.min(...watering.sets.map(({ spare_m }) => spare_m)), 9);
    expect(whole?.evenness_ratio).toBe(watering.blocks[leastEven(watering)]?.emission_ratio);
    expect(whole?.peak?.month).toBe(7);
    expect(wholeWatering({ ...watering, sets: [] })).toBeNull();
  });
});

describe("the printed check of the first run", () => {
  it("has a line a row that is checked, and room beside every number", () => {
    const sheet = firstRunSheet(plan, "us");
    if (sheet === null) throw new Error("there are sets to check");
    const page = firstRunPage({ ...sheet, title: "Acre <b>" });
    expect(page).toContain("<title>Acre &lt;b&gt;</title>");
    expect(page.match(/<tr><td>/g)).toHaveLength(sheet.checks.length);
    expect(page.match(/<td class="found">/g)).toHaveLength(4 * sheet.checks.length);
    for (const { tail } of sheet.checks) expect(page).toContain(tail);
  });
});
