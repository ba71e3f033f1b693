import { describe, expect, test } from "vitest";
import { openProject } from "../../../src/app/commands/open-project.ts";
import { choiceFor } from "../../../src/app/hand-over/choice-for.ts";
import {
  choiceOf,
  chooseForAll,
  chooseForFormat,
  chooseThing,
  handOverChoicesOf,
} from "../../../src/app/hand-over/hand-over-choices.ts";
import { namingExample } from "../../../src/app/hand-over/naming-example.ts";
import { systemsHere } from "../../../src/app/hand-over/systems-here.ts";
import { countedThings } from "../../../src/app/hand-over/things.ts";
import { createStore, type Store } from "../../../src/app/store.ts";
import { choiceFindings } from "../../../src/core/exchange/choice-findings.ts";
import { formatNamed, formats } from "../../../src/core/exchange/formats.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { openStoreText } from "./open-store-text.ts";

function createOpenStore(): Store {
  const store = createStore();
  if (!openProject(store, openStoreText, "invented.geojson")) throw new Error("it was not opened");
  return store;
}

function planOf(store: Store): Plan {
  const plan = store.shownPlan.value;
  if (plan === null) throw new Error("there is no plan");
  return plan;
}

/** The choice as it is handed on. */
function handedOn(store: Store) {
  const plan = planOf(store);
  return choiceFor(handOverChoicesOf(store), plan, countedThings(plan));
}

describe("what goes out", () => {
  test("every format begins with things that it holds", () => {
    for (const { name, usual, holds } of formats) {
      expect(usual.length, name).toBeGreaterThan(0);
      for (const thing of usual) expect(holds, name).toContain(thing);
    }
  });

  test("counts everything of a plan, and nothing of what it has not", () => {
    const counts = new Map(countedThings(planOf(createOpenStore())).map(({ thing, count }) => [thing, count]));
    expect(counts.get("parcels")).toBe(1);
    expect(counts.get("rows")).toBeGreaterThan(10);
    expect(counts.get("posts")).toBeGreaterThan(2 * (counts.get("rows") ?? 0) - 1);
    expect(counts.get("route")).toBe(0);
    expect(counts.get("plan")).toBeNull();
  });

  test("what the plan has not is left out, ticked or not", () => {
    const store = createOpenStore();
    handOverChoicesOf(store).as.value = "kml";
    expect(choiceOf(handOverChoicesOf(store)).of).toContain("route");
    expect(handedOn(store).of).toEqual(["parcels", "blocks", "rows"]);
  });

  test("ticks belong to the format they were made in", () => {
    const store = createOpenStore();
    const choices = handOverChoicesOf(store);
    chooseThing(choices, "vines", true);
    chooseThing(choices, "posts", true);
    chooseThing(choices, "posts", false);
    expect(handedOn(store).of).toEqual(["rows", "vines"]);
    choices.as.value = "gpx";
    expect(handedOn(store).of).toEqual(["rows", "posts"]);
    choices.as.value = "geojson";
    expect(handedOn(store).of).toEqual(["rows", "vines"]);
  });
});

describe("choices of a page", () => {
  test("ask nothing of a format that it does not know", () => {
    const store = createOpenStore();
    const choices = handOverChoicesOf(store);
    for (const name of formats.map((each) => each.name)) {
      choices.as.value = name;
      chooseForFormat(choices, { naming: "{row}", nameLength: 20, pointsAFile: 500, together: true });
    }
    chooseForAll(choices, { system: "EPSG:32610", unit: "us-ft", baseline: "row 1" });
    for (const name of formats.map((each) => each.name)) {
      choices.as.value = name;
      expect(choiceFindings(handedOn(store), formatNamed(name)), name).toEqual([]);
    }
  });

  test("rows and the line to measure from are of one project: another one begins without", () => {
    const store = createOpenStore();
    const choices = handOverChoicesOf(store);
    chooseForAll(choices, { rows: "1-3", baseline: "row 1", system: "local" });
    if (!openProject(store, openStoreText, "again.geojson")) throw new Error("it was not opened");
    expect(choiceOf(choices)).toMatchObject({ rows: null, baseline: null, system: "local" });
  });

  test("a format without degrees begins in the zone of the place", () => {
    const store = createOpenStore();
    const choices = handOverChoicesOf(store);
    choices.as.value = "dxf";
    expect(handedOn(store).system).toBe("EPSG:32610");
    chooseForAll(choices, { system: "local" });
    expect(handedOn(store).system).toBe("local");
    choices.as.value = "gpx";
    expect(handedOn(store).system).toBeNull();
  });

  test("near a place are its UTM zones, of NAD83 too where that is used", () => {
    const labels = systemsHere(planOf(createOpenStore())).map(({ label }) => label);
    expect(labels).toEqual(["UTM 10 north, WGS 84", "UTM 10 north, NAD83"]);
  });
});

describe("an example of a name", () => {
  test("is of the first of each kind that goes out, as typed", () => {
    const store = createOpenStore();
    const plan = planOf(store);
    const gpx = formatNamed("gpx");
    handOverChoicesOf(store).as.value = "gpx";
    const choice = handedOn(store);
    expect(namingExample(plan, gpx, choice)).toBe("such as R1, R1E01");
    expect(namingExample(plan, gpx, { ...choice, naming: "{code}-{row}" })).toBe("such as 1, E-1");
    expect(namingExample(plan, gpx, { ...choice, of: [] })).toBeNull();
  });
});
