import { readFileSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import { lonLat } from "../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import { geodesic } from "../support/geodesic.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";

/** What a person may be asked for at most. */
const mostActions = 12;
const mostTyped = 5;

/** A row in the file may differ from the core's own by the eighth decimal of a degree at both ends. */
const written_m = 0.003;

interface RowFeature {
  readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly [number, number])[] };
  readonly properties: Readonly<Record<string, unknown>>;
}

/** Hands that count: every press and every typed value goes through them, and nothing else touches the page. */
class CountingHands {
  actions = 0;
  typed = 0;
  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
  }

  async press(target: Locator): Promise<void> {
    this.actions++;
    await target.click();
  }

  async pressMap(x: number, y: number): Promise<void> {
    this.actions++;
    await this.#page.mouse.click(x, y);
  }

  async key(name: string): Promise<void> {
    this.actions++;
    await this.#page.keyboard.press(name);
  }

  /** Types a value where the page has put the cursor. */
  async type(value: string): Promise<void> {
    this.typed++;
    await this.#page.keyboard.type(value);
  }
}

async function exportedRows(page: Page, hands: CountingHands): Promise<readonly RowFeature[]> {
  await hands.press(page.getByRole("button", { name: "Hand over", exact: true }));
  const waiting = page.waitForEvent("download");
  await hands.press(page.getByRole("button", { name: "Save rows.geojson" }));
  const read: { readonly features: readonly RowFeature[] } = JSON.parse(
    readFileSync(await (await waiting).path(), "utf8"),
  );
  return read.features;
}

/** Holds the exported rows against the core's own plan of the saved project, and their lengths against the ellipsoid. */
async function expectRowsOfThePlan(page: Page, rows: readonly RowFeature[]): Promise<void> {
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: /^Save the project/ }).click();
  const project = parseProject(readFileSync(await (await waiting).path(), "utf8"));
  if (!project.ok) throw new Error("the saved project can not be read");
  const plan = createPlanner().plan(project.value);
  const planned = plan.rows?.rows ?? [];
  const frame = plan.ground?.frame;
  if (!frame) throw new Error("no ground is laid out");
  expect(planned.length).toBeGreaterThan(10);
  expect(rows).toHaveLength(planned.length);
  planned.forEach((row, i) => {
    const feature = rows[i];
    const [start, end] = feature?.geometry.coordinates ?? [];
    if (!feature || !start || !end) throw new Error(`row ${row.id} is missing`);
    expect(feature.properties.row ?? feature.properties.id).toBe(row.id);
    const [from, to] = [lonLat(start[0], start[1]), lonLat(end[0], end[1])];
    expect(geodesic(from, frame.toLonLat(row.start)).length_m).toBeLessThan(written_m);
    expect(geodesic(to, frame.toLonLat(row.end)).length_m).toBeLessThan(written_m);
    expect(Math.abs(geodesic(from, to).length_m - row.length_m)).toBeLessThan(written_m);
    expect(Math.abs(geodesic(from, to).length_m - Number(feature.properties.length_m))).toBeLessThan(written_m);
  });
}

test("from an empty map to exported rows by mouse in at most 12 actions and 5 typed values", async ({ page }) => {
  await page.goto("/");
  const hands = new CountingHands(page);
  await hands.press(page.getByRole("button", { name: "Start with an empty map" }));
  await hands.press(page.getByLabel("Latitude and longitude"));
  await hands.type("38.2914, -122.4580");
  await hands.key("Enter");
  await hands.press(page.getByRole("button", { name: "Draw the parcel" }));
  const box = await page.locator(".map").boundingBox();
  if (!box) throw new Error("there is no map");
  const corners = [
    [0.3, 0.25],
    [0.7, 0.3],
    [0.66, 0.7],
    [0.32, 0.68],
  ] as const;
  for (const [across, down] of corners) {
    const [x, y] = [box.x + box.width * across, box.y + box.height * down];
    await page.mouse.move(x, y, { steps: 3 });
    await hands.pressMap(x, y);
    await page.waitForTimeout(500);
  }
  await hands.key("Enter");
  await expect(page.getByRole("heading", { name: "Parcel 1" })).toBeVisible();
  const rows = await exportedRows(page, hands);
  await picture(page, "empty-to-rows");
  console.log(`by mouse: ${hands.actions} actions, ${hands.typed} typed values, ${rows.length} rows`);
  expect(hands.actions).toBeLessThanOrEqual(mostActions);
  expect(hands.typed).toBeLessThanOrEqual(mostTyped);
  await expectRowsOfThePlan(page, rows);
  await expectAccessible(page);
});

test("from an empty map to exported rows by typed lengths and bearings in at most 12 actions and 5 typed values", async ({
  page,
}) => {
  await page.goto("/");
  const hands = new CountingHands(page);
  await hands.press(page.getByRole("button", { name: "Start with an empty map" }));
  await hands.press(page.getByRole("button", { name: "Draw the parcel" }));
  for (const corner of ["38.2914, -122.4580", "120 m at 80", "90 m at 165", "140 m at 262"]) {
    await hands.type(corner);
    await hands.key("Enter");
  }
  await hands.key("Enter");
  await expect(page.getByRole("heading", { name: "Parcel 1" })).toBeVisible();
  const rows = await exportedRows(page, hands);
  console.log(`by typing: ${hands.actions} actions, ${hands.typed} typed values, ${rows.length} rows`);
  expect(hands.actions).toBeLessThanOrEqual(mostActions);
  expect(hands.typed).toBeLessThanOrEqual(mostTyped);
  await expectRowsOfThePlan(page, rows);
});
