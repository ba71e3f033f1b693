import { describe, expect, test } from "vitest";
import { openProject } from "../../../src/app/commands/open-project.ts";
import { bytesText } from "../../../src/app/hand-over/bytes-text.ts";
import { createHandOverWork } from "../../../src/app/hand-over/hand-over-work.ts";
import { outgoingFeatures } from "../../../src/app/hand-over/outgoing.ts";
import { previewTables } from "../../../src/app/hand-over/preview.ts";
import { textBeginning } from "../../../src/app/hand-over/text-beginning.ts";
import { unsettled } from "../../../src/app/hand-over/unsettled.ts";
import { createStore, type Store } from "../../../src/app/store.ts";
import { type HandOverChoice, usualChoice } from "../../../src/core/exchange/choice.ts";
import type { Chunk, OutFile } from "../../../src/core/exchange/format.ts";
import { handedOver } from "../../support/handed-over.ts";
import { openStoreText } from "./open-store-text.ts";

function createOpenStore(): Store {
  const store = createStore();
  if (!openProject(store, openStoreText, "invented.geojson")) throw new Error("it was not opened");
  return store;
}

function tablesOf(choice: Partial<HandOverChoice>) {
  const plan = createOpenStore().shownPlan.value;
  if (plan === null) throw new Error("there is no plan");
  return previewTables(handedOver(plan, choice));
}

describe("the preview", () => {
  test("shows the first of every layer with its name and place, and how many there are", () => {
    const [rows, posts, ...more] = tablesOf({ as: "csv", of: ["rows", "posts"] });
    expect(more).toEqual([]);
    expect(rows?.name).toBe("Rows");
    expect(rows?.heads.slice(0, 4)).toEqual(["name", "first longitude, °", "first latitude, °", "role"]);
    expect(rows?.lines).toHaveLength(4);
    expect(rows?.lines[0]?.slice(0, 1)).toEqual(["row-1"]);
    expect(rows?.lines[0]?.[1]).toMatch(/^-121\.18\d{6}$/);
    expect(posts?.heads.slice(0, 3)).toEqual(["name", "longitude, °", "latitude, °"]);
    expect(posts?.count).toBeGreaterThan(2 * (rows?.count ?? 0) - 1);
  });

  test("shows places in the system that is chosen, with its unit", () => {
    const [posts] = tablesOf({ as: "csv", of: ["posts"], system: "EPSG:32610" });
    expect(posts?.heads.slice(0, 3)).toEqual(["name", "easting, m", "northing, m"]);
    expect(posts?.lines[0]?.[2]).toMatch(/^43\d{5}\.\d{3}$/);
  });

  test("every line has as many cells as there are heads", () => {
    for (const { heads, lines, name } of tablesOf({ as: "csv", of: ["parcels", "blocks", "rows", "vines", "posts"] })) {
      for (const cells of lines) expect(cells, name).toHaveLength(heads.length);
    }
  });
});

describe("what goes out, on the map", () => {
  test("is every feature at its place, areas by their edges", () => {
    const plan = createOpenStore().shownPlan.value;
    if (plan === null) throw new Error("there is no plan");
    const { layers } = handedOver(plan, { as: "geojson", of: ["parcels", "rows", "posts"] });
    const features = outgoingFeatures(layers);
    expect(features).toHaveLength(layers.reduce((sum, { count }) => sum + count, 0));
    const [outline] = features;
    expect(outline?.geometry).toMatchObject({ type: "MultiLineString" });
    const ring = outline?.geometry.type === "MultiLineString" ? outline.geometry.coordinates[0] : [];
    expect(ring).toHaveLength(5);
    expect(ring?.[4]).toEqual(ring?.[0]);
  });

  test("a layer that is too much is left out whole", () => {
    const plan = createOpenStore().shownPlan.value;
    if (plan === null) throw new Error("there is no plan");
    const { layers } = handedOver(plan, { as: "geojson", of: ["rows", "vines"] });
    const [rows, vines] = layers;
    if (!rows || !vines) throw new Error("two layers were asked for");
    expect(outgoingFeatures([{ ...vines, count: 6000 }, rows])).toHaveLength(rows.count);
  });
});

describe("how a file begins", () => {
  const file = (chunks: () => Iterable<Chunk>): OutFile => ({
    name: "a",
    mediaType: "b",
    content: { kind: "chunks", chunks },
  });

  test("a short text is shown whole", () => {
    expect(textBeginning(file(() => ["name,kind\r\n", "row-1,row\r\n"]))).toBe("name,kind\r\nrow-1,row\r\n");
  });

  test("of a long one only the first lines are made", () => {
    let made = 0;
    const text = textBeginning(
      file(function* () {
        for (; made < 1e6; made++) yield `line ${made}\n`;
      }),
    );
    expect(text?.split("\n")).toHaveLength(13);
    expect(text?.endsWith("\n…")).toBe(true);
    expect(made).toBeLessThan(20);
  });

  test("what is packed, or a database, is no text", () => {
    expect(textBeginning(file(() => [new Uint8Array([80, 75])]))).toBeNull();
    const content = { kind: "database", statements: () => [] } as const;
    expect(textBeginning({ name: "a", mediaType: "b", content })).toBeNull();
  });
});

describe("the work", () => {
  const choice: HandOverChoice = { ...usualChoice, as: "csv", of: ["rows"] };

  function createWork() {
    const store = createOpenStore();
    const saved: string[] = [];
    return { store, saved, work: createHandOverWork(store, (name) => saved.push(name)) };
  }

  test("saves the files of a choice, and says what was saved", async () => {
    const { work, saved } = createWork();
    await work.start(choice);
    expect(saved).toEqual(["invented-csv.zip"]);
    expect(work.state.value).toMatchObject({ kind: "done", name: "invented-csv.zip", files: 2 });
  });

  test("a choice that cannot be is refused in words, and nothing is saved", async () => {
    const { work, saved } = createWork();
    await work.start({ ...choice, rows: "900" });
    expect(work.state.value).toMatchObject({ kind: "refused", findings: [{ code: "exchange/rows-unknown" }] });
    expect(saved).toEqual([]);
  });

  test("saves a GeoPackage that SQLite has made", async () => {
    const store = createOpenStore();
    const heads: string[] = [];
    const work = createHandOverWork(store, (_, blob) => {
      void blob
        .slice(0, 15)
        .text()
        .then((head) => heads.push(head));
    });
    await work.start({ ...usualChoice, as: "geopackage", of: ["rows"] });
    expect(work.state.value).toMatchObject({ kind: "done", files: 1 });
    await expect.poll(() => heads).toEqual(["SQLite format 3"]);
  });

  test("waits for the main line that is being laid, and stops when asked to", async () => {
    const { store, work, saved } = createWork();
    store.routeState.value = "asked";
    expect(unsettled(store, choice.of)).toEqual(["the main line"]);
    const first = work.start(choice);
    expect(work.state.value).toEqual({ kind: "waiting", parts: ["the main line"] });
    work.stop();
    await first;
    expect(work.state.value).toEqual({ kind: "stopped" });
    expect(saved).toEqual([]);

    const second = work.start(choice);
    store.routeState.value = "laid";
    await second;
    expect(saved).toEqual(["invented-csv.zip"]);
  });
});

test("sizes of files are said in thousands", () => {
  expect([0, 840, 12_410, 31_040_000].map(bytesText)).toEqual(["0 bytes", "840 bytes", "12.4 kB", "31.0 MB"]);
});
