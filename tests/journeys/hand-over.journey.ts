import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { bearingOf, handle, openOwnFile, openSample, openStage, result, rowButtons } from "./steps.ts";

interface Collection {
  readonly type: string;
  readonly features: readonly {
    readonly geometry: { readonly type: string; readonly coordinates: readonly unknown[] };
    readonly properties: Readonly<Record<string, unknown>>;
  }[];
}

async function exported(page: Page, name: RegExp): Promise<{ file: string; text: string }> {
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name }).click();
  const download = await waiting;
  return { file: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

function collection(text: string): Collection {
  return JSON.parse(text);
}

async function openText(page: Page, name: string, text: string): Promise<void> {
  await page.getByRole("button", { name: "Open…" }).click();
  await openOwnFile(page, name, text);
}

test("rows, vines and posts leave the page as GeoJSON with as many features as the plan counts", async ({ page }) => {
  await openSample(page);
  const rows = Number.parseInt(await result(page, "Rows"), 10);
  const vines = Number((await result(page, "Materials")).replace(/ vines.*$/, "").replace(/[^\d]/g, ""));
  await openStage(page, "Hand over");
  await expectAccessible(page);
  await picture(page, "hand-over");
  const lines = await exported(page, /^Rows GeoJSON/);
  expect(lines.file).toBe("acre-with-a-notch-rows.geojson");
  expect(collection(lines.text).features).toHaveLength(rows);
  expect(collection((await exported(page, /^Vines GeoJSON/)).text).features).toHaveLength(vines);
  const posts = collection((await exported(page, /^Posts GeoJSON/)).text);
  expect(posts.features.length).toBeGreaterThanOrEqual(2 * rows);
  for (const { geometry } of posts.features) expect(geometry.type).toBe("Point");
});

test("a project that was changed, saved and opened again gives the same rows", async ({ page }) => {
  await openSample(page);
  await page.getByLabel("Bearing", { exact: true }).fill("31.5");
  await page.getByLabel("Vine spacing", { exact: true }).fill("5 ft");
  await expect(handle(page)).toHaveAttribute("aria-valuenow", "31.5");
  // The list follows the rows by and by: the main line and its water, then the coils.
  await expect.poll(() => result(page, "Trench")).toContain("to dig");
  await expect.poll(() => result(page, "Drip")).toContain("sets");
  await page.waitForTimeout(2000);
  const [rows, materials] = [await result(page, "Rows"), await result(page, "Materials")];
  expect(materials).toContain("to buy");
  await openStage(page, "Hand over");
  const saved = await exported(page, /^Save the project/);
  expect(saved.file).toBe("acre-with-a-notch.geojson");

  await page.goto("/?sample=crooked-strip");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Crooked strip");
  await openText(page, saved.file, saved.text);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch");
  expect(await bearingOf(handle(page))).toBe(31.5);
  expect(await result(page, "Rows")).toBe(rows);
  await expect.poll(() => result(page, "Materials")).toBe(materials);
  await expect(page.getByLabel("Vine spacing", { exact: true })).toHaveValue("5 ft");
});

test("exported rows can be opened again: they stand where they were", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  const saved = collection((await exported(page, /^Save the project/)).text);
  const lines = collection((await exported(page, /^Rows GeoJSON/)).text);
  const rows = await result(page, "Rows");
  // The crew's file laid into the project: every row now stands already.
  await openText(
    page,
    "standing.geojson",
    JSON.stringify({ ...saved, features: [...saved.features, ...lines.features] }),
  );
  await expect(rowButtons(page).first()).toBeVisible();
  await expect.poll(() => result(page, "Rows")).toBe(rows);
});

test("the shopping list names packages, and the cautions are there to be read", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Materials");
  await expect(page.locator(".materials tbody tr").first()).toBeVisible();
  await expect(page.locator(".materials td.to-buy").filter({ hasText: "×" }).first()).toBeVisible();
  await page.locator(".materials").scrollIntoViewIfNeeded();
  await picture(page, "materials");
  await page.getByText("Before you build").click();
  await expect(page.getByText("Call the utility-locating service")).toBeVisible();
  await expectAccessible(page);
});
