import { readFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { openAddress } from "../../src/app/commands/open-address.ts";
import { openFile } from "../../src/app/commands/open-file.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { createStore } from "../../src/app/store.ts";

const sample = readFileSync(new URL("../../samples/acre-with-notch/project.geojson", import.meta.url), "utf8");
const page = new URL("http://127.0.0.1:4000/tautrow/");

function createOpenStore() {
  const store = createStore();
  openProject(store, sample, "acre.geojson");
  return store;
}

describe("opening a project", () => {
  test("a sample is planned, shown in the units of its file, with its first block chosen", () => {
    const store = createOpenStore();
    expect(store.project.value?.name).toBe("Acre with a notch");
    expect(store.units.value).toBe("us");
    expect(store.blockId.value).toBe(store.project.value?.blocks[0]?.id);
    expect(store.plan.value?.rows?.rows.length).toBeGreaterThan(10);
    expect(store.refusal.value).toBeNull();
  });

  test.each([
    ["a letter", "Dear neighbour"],
    ["an empty file", ""],
    ["half a file", sample.slice(0, sample.length / 2)],
    ["a collection with no parcel", '{"type":"FeatureCollection","features":[]}'],
    ["a point", '{"type":"Point","coordinates":[7,50]}'],
  ])("%s is refused with a reason and what was open stays open", (_, text) => {
    const store = createOpenStore();
    const [project, plan] = [store.project.value, store.plan.value];
    openProject(store, text, "other.geojson");
    expect(store.project.value).toBe(project);
    expect(store.plan.value).toBe(plan);
    expect(store.refusal.value?.file).toBe("other.geojson");
    expect(store.refusal.value?.findings.some(({ severity }) => severity === "error")).toBe(true);
  });

  test("the next good file takes the refusal away and forgets the chosen row", () => {
    const store = createOpenStore();
    store.row.value = "3";
    openProject(store, "nothing", "bad.geojson");
    openProject(store, sample, "good.geojson");
    expect(store.refusal.value).toBeNull();
    expect(store.row.value).toBeNull();
    expect(store.opened.value).toBe(2);
  });

  test("a parcel whose outline crosses itself is opened, so that the crossing can be seen", () => {
    const store = createStore();
    const bowTie = [
      [7, 50],
      [7.001, 50.001],
      [7.001, 50],
      [7, 50.001],
      [7, 50],
    ];
    openProject(store, JSON.stringify({ type: "Polygon", coordinates: [bowTie] }), "bow-tie.geojson");
    expect(store.project.value).not.toBeNull();
    expect(store.plan.value?.rows).toBeNull();
    expect(store.plan.value?.findings.some(({ severity, at }) => severity === "error" && at !== null)).toBe(true);
  });

  test("a file the browser may not read is refused", async () => {
    const store = createOpenStore();
    const locked = Object.assign(new Blob([]), { name: "locked.geojson", text: () => Promise.reject(new Error("no")) });
    await openFile(store, locked);
    expect(store.refusal.value?.file).toBe("locked.geojson");
    expect(store.project.value?.name).toBe("Acre with a notch");
  });
});

describe("opening an address", () => {
  test("another server is never asked", async () => {
    const asked = vi.fn();
    vi.stubGlobal("fetch", asked);
    const store = createStore();
    await openAddress(store, "https://example.com/parcel.geojson", page);
    await openAddress(store, "//example.com/parcel.geojson", page);
    await openAddress(store, "data:application/json,{}", page);
    expect(asked).not.toHaveBeenCalled();
    expect(store.refusal.value).not.toBeNull();
    vi.unstubAllGlobals();
  });

  test("a file of the page's own server is opened, a missing one refused with the server's answer", async () => {
    const answers: Readonly<Record<string, Response>> = {
      "/tautrow/parcel.geojson": new Response(sample),
      "/gone.geojson": new Response("", { status: 404 }),
    };
    vi.stubGlobal("fetch", (target: URL) => Promise.resolve(answers[target.pathname] ?? Response.error()));
    const store = createStore();
    await openAddress(store, "parcel.geojson", page);
    expect(store.project.value?.name).toBe("Acre with a notch");
    await openAddress(store, "/gone.geojson", page);
    expect(store.refusal.value?.file).toBe("gone.geojson");
    expect(JSON.stringify(store.refusal.value?.findings)).toContain("404");
    vi.unstubAllGlobals();
  });
});
