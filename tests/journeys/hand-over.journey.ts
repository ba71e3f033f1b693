import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { chooseFormat, exported, saveFiles, tickOnly, unpacked } from "./hand-over-steps.ts";
import { bearingOf, handle, openOwnFile, openSample, openStage, result, rowButtons } from "./steps.ts";

interface Collection {
  readonly type: string;
  readonly features: readonly {
    readonly geometry: { readonly type: string; readonly coordinates: readonly unknown[] };
    readonly properties: Readonly<Record<string, unknown>>;
  }[];
}

function collection(text: string | undefined): Collection {
  return JSON.parse(text ?? "");
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
  await expect(page.getByRole("radio", { name: "GeoJSON" })).toBeChecked();
  await expect(page.getByLabel("What will be in the files")).toContainText("rows.geojson");
  await expectAccessible(page);
  await picture(page, "hand-over");
  await tickOnly(page, "Rows");
  const lines = await saveFiles(page, "Save rows.geojson");
  expect(lines.file).toBe("acre-with-a-notch-rows.geojson");
  expect(collection(lines.text).features).toHaveLength(rows);
  await tickOnly(page, "Vines", "Posts");
  const both = await saveFiles(page, "Save 2 files");
  expect(both.file).toBe("acre-with-a-notch-geojson.zip");
  const texts = unpacked(both.bytes);
  expect(Object.keys(texts)).toEqual(["vines.geojson", "posts.geojson"]);
  expect(collection(texts["vines.geojson"]).features).toHaveLength(vines);
  const posts = collection(texts["posts.geojson"]);
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
  await tickOnly(page, "Rows");
  const lines = collection((await saveFiles(page, "Save rows.geojson")).text);
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

test("what is shown before is what is in the file: names by a pattern as it is typed, for the rows that are chosen", async ({
  page,
}) => {
  await openSample(page);
  await openStage(page, "Hand over");
  await chooseFormat(page, "GPX");
  await expect(page.getByText("for handheld receivers and crew phones")).toBeVisible();
  await tickOnly(page, "Posts");
  await page.getByLabel("Names", { exact: true }).fill("{code}{row}-{number:2}");
  await expect(page.getByText("such as E1-01")).toBeVisible();
  await page.getByLabel("Which rows").fill("2-4, 13a");
  await expect(page.getByText("4 of 39 rows")).toBeVisible();
  const table = page.getByRole("region", { name: "The first of: Posts" });
  await expect(table.locator("tbody tr").first().locator("td").first()).toHaveText("E2-01");
  const shown = await table
    .locator("tbody tr")
    .evaluateAll((lines) => lines.map((line) => line.children[0]?.textContent));
  await page.getByText("posts.gpx", { exact: true }).click();
  await expect(page.getByLabel("How posts.gpx begins")).toContainText("<gpx");
  await expectAccessible(page);
  const { file, text } = await saveFiles(page, "Save posts.gpx");
  expect(file).toBe("acre-with-a-notch-posts.gpx");
  const names = [...text.matchAll(/<wpt [^>]*>.*?<name>([^<]*)<\/name>/gs)].map(([, name]) => name);
  expect(names.slice(0, shown.length)).toEqual(shown);
  for (const name of names) expect(name).toMatch(/^[EP](2|3|4|13a)-\d\d$/i);
});

test("rows that are not there keep the file from being written, in words beside the field", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  await tickOnly(page, "Rows");
  const rows = page.getByLabel("Which rows");
  const save = page.locator(".hand-over-write").getByRole("button");
  await expect(save).toBeEnabled();
  await rows.fill("1-3, 99");
  await rows.press("Tab");
  await expect(rows).toHaveAttribute("aria-invalid", "true");
  await expect(page.getByRole("alert")).toContainText("99");
  await expect(save).toBeDisabled();
  await rows.focus();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("1-3");
  await expect(page.getByText("3 of 39 rows")).toBeVisible();
  await expect(save).toBeEnabled();
  expect(collection((await saveFiles(page, "Save rows.geojson")).text).features).toHaveLength(3);
});

test("places leave in a system that is chosen by its code, and said beside the file", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  await chooseFormat(page, "CSV");
  await tickOnly(page, "Marks");
  await page.getByLabel("Places in").selectOption({ label: "another, by its code" });
  const code = page.getByLabel("EPSG code");
  await code.fill("27700");
  await code.press("Tab");
  await expect(page.getByRole("alert")).toContainText("27700");
  await code.fill("2226");
  await expect(page.getByText(/EPSG 2226/).first()).toBeVisible();
  const { bytes } = await saveFiles(page, "Save 2 files");
  const texts = unpacked(bytes);
  expect(texts["marks.csv"]).toContain("easting");
  expect(Object.entries(texts).find(([name]) => name.endsWith("about.txt"))?.[1]).toContain("2226");
});

test("by keys alone: a format, a thing, and the file", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  await page.getByRole("radio", { name: "GeoJSON" }).focus();
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "KML" })).toBeChecked();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("checkbox", { name: /^Parcels/ })).toBeFocused();
  await page.keyboard.press("Space");
  await expect(page.getByRole("checkbox", { name: /^Parcels/ })).not.toBeChecked();
  const save = page.getByRole("button", { name: "Save plan.kml" });
  await save.focus();
  const waiting = page.waitForEvent("download");
  await page.keyboard.press("Enter");
  expect((await waiting).suggestedFilename()).toBe("acre-with-a-notch-plan.kml");
});

test("writing that is stopped saves nothing, and leaves the step as it was", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  const save = page.getByRole("button", { name: "Save rows.geojson" });
  await expect(save).toBeEnabled();
  // The page comes to its turn late, as if there were very much to write.
  await page.evaluate(() => {
    const post = MessagePort.prototype.postMessage;
    MessagePort.prototype.postMessage = function (this: MessagePort, ...message: unknown[]) {
      setTimeout(() => Reflect.apply(post, this, message), 1500);
    };
  });
  const downloads: string[] = [];
  page.on("download", (download) => downloads.push(download.suggestedFilename()));
  await save.click();
  await expect(page.getByRole("progressbar")).toBeVisible();
  await page.locator(".hand-over-write").getByRole("button", { name: "Stop" }).click();
  await expect(page.getByText("Stopped: no file was saved.")).toBeVisible();
  await expect(save).toBeEnabled();
  expect(downloads).toEqual([]);
});

test("a GeoPackage leaves as a database, with SQLite fetched for it", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Hand over");
  await chooseFormat(page, "GeoPackage");
  const { file, text } = await saveFiles(page, "Save plan.gpkg");
  expect(file).toBe("acre-with-a-notch-plan.gpkg");
  expect(text.slice(0, 15)).toBe("SQLite format 3");
});
