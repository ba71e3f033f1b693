import type { Page } from "@playwright/test";
import { heightFile } from "../support/height-file.ts";
import { savedOf } from "./drawing-steps.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage } from "./steps.ts";

const foot_m = 0.3048;

/** An invented hill around the first sample: 160 x 160 cells of 2 m in UTM zone 10 north, heights in feet. */
function hill(more: { readonly epsg?: number | null; readonly unit?: number | null } = {}): Buffer {
  return heightFile({
    width: 160,
    height: 160,
    cell: 2,
    west: 656_760,
    north: 4_335_286,
    epsg: more.epsg === undefined ? 32610 : more.epsg,
    verticalUnit: more.unit ?? null,
    noData: -9999,
    heightAt: (column, line) => 1400 + 0.25 * column + 12 * Math.exp(-((column - 90) ** 2 + (line - 70) ** 2) / 900),
  });
}

function heights(page: Page) {
  return page.locator("details.stage-part", { hasText: "Heights" });
}

async function openHeights(page: Page): Promise<void> {
  await openStage(page, "Ground");
  await heights(page).locator("summary").click();
}

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open a height file" }).click();
  await (await chooser).setFiles({ name, mimeType: "image/tiff", buffer });
}

async function takeHill(page: Page, unit = "ft"): Promise<void> {
  await choose(page, "hill.tif", hill());
  await page.getByLabel("Heights are in").selectOption(unit);
  await page.getByRole("button", { name: "Use these heights" }).click();
  await expect(page.getByText("The heights of hill.tif are in the project.")).toBeVisible();
}

/** Heights of the contours that the map has drawn, m. */
function contoursDrawn(page: Page): Promise<number[]> {
  return page.evaluate(() => {
    const map = window.tautrowBench?.map;
    if (!map?.getLayer("relief-contours-lines")) return [];
    const features = map.queryRenderedFeatures({ layers: ["relief-contours-lines"] });
    return [...new Set(features.map(({ properties }) => Number(properties.height_m)))].sort((a, b) => a - b);
  });
}

test("a height file is looked at, its unit is asked, and its heights go into the project as one step", async ({
  page,
}) => {
  test.slow();
  await openSample(page, "acre-with-notch", "&bench");
  await openHeights(page);
  await expect(heights(page)).toContainText("none: the ground counts as flat");
  await expect(page.getByRole("button", { name: "Relief" })).toHaveCount(0);
  await choose(page, "hill.tif", hill());
  const form = page.getByRole("form", { name: "Height file" });
  await expect(form).toContainText("160 × 160 cells");
  await expect(form).toContainText("covers the whole parcel");
  // What the file does not say is not guessed.
  await expect(page.getByLabel("Heights are in")).toHaveValue("");
  await expect(page.getByRole("button", { name: "Use these heights" })).toBeDisabled();
  await expectAccessible(page);
  await picture(page, "terrain-asked");
  await page.getByLabel("Heights are in").selectOption("ft");
  await page.getByRole("button", { name: "Use these heights" }).click();
  await expect(page.getByText("The heights of hill.tif are in the project.")).toBeVisible();
  await expect(heights(page).locator("summary")).toContainText(
    /a grid of \d+ × \d+ heights, one every 3\.3 ft, 1,4\d\d/,
  );
  await expectAccessible(page);

  // Feet were chosen: about 1400 ft, not 1400 m.
  const [grid] = await savedOf(page, "elevation");
  const stated = grid?.properties.grid as { readonly heights: readonly (number | null)[] } | undefined;
  const known = (stated?.heights ?? []).filter((height) => height !== null);
  expect(known.length).toBeGreaterThan(100);
  expect(Math.min(...known) / 100).toBeGreaterThan(1400 * foot_m - 1);
  expect(Math.max(...known) / 100).toBeLessThan(1455 * foot_m);

  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(heights(page)).toContainText("none: the ground counts as flat");
  expect(await savedOf(page, "elevation")).toEqual([]);
  await page.getByRole("button", { name: /^Redo/ }).click();
  await expect(heights(page)).toContainText("a grid of");
  await page.getByRole("button", { name: "Take the heights out" }).click();
  await expect(heights(page)).toContainText("none: the ground counts as flat");
});

test("relief draws shading and contours of whole feet under the rows, and is kept on this device", async ({ page }) => {
  test.slow();
  await openSample(page, "acre-with-notch", "&bench");
  await openHeights(page);
  await takeHill(page);
  const relief = page.getByRole("button", { name: "Relief" });
  await relief.focus();
  if ((await relief.getAttribute("aria-pressed")) === "false") await page.keyboard.press("Enter");
  await expect(relief).toHaveAttribute("aria-pressed", "true");
  await expect.poll(() => contoursDrawn(page).then(({ length }) => length)).toBeGreaterThan(3);
  const drawn = await contoursDrawn(page);
  const interval_ft = Math.min(...drawn.slice(1).map((height_m, i) => (height_m - Number(drawn[i])) / foot_m));
  for (const height_m of drawn) {
    const steps = height_m / foot_m / interval_ft;
    expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-3);
  }
  await expectAccessible(page);
  await page.waitForTimeout(800);
  await picture(page, "terrain-relief");
  await page.locator(".maplibregl-canvas").focus();
  await page.keyboard.press("=");
  await page.waitForTimeout(1500);
  await picture(page, "terrain-relief-near");

  // In metres the lines are of whole metres, or tenths.
  await page.getByRole("radio", { name: "Metric" }).check();
  await expect
    .poll(async () => {
      const heights_m = await contoursDrawn(page);
      return (
        heights_m.length > 2 &&
        heights_m.every((height_m) => Math.abs(height_m * 10 - Math.round(height_m * 10)) < 1e-6)
      );
    })
    .toBe(true);
  await relief.click();
  await expect.poll(() => contoursDrawn(page)).toEqual([]);
  await openSample(page);
  await expect(page.getByRole("button", { name: "Relief" })).toHaveCount(0);
  expect(await page.evaluate(() => localStorage.getItem("tautrow-relief"))).toBe("off");
});

test("a file that is no GeoTIFF, and one that lies elsewhere, get a sentence", async ({ page }) => {
  await openSample(page);
  await openHeights(page);
  await choose(page, "letter.tif", Buffer.from("This is a letter, not a picture of the ground."));
  const told = heights(page).locator(".height-told");
  await expect(told).toContainText("letter.tif was not taken");
  await expect(told.getByRole("listitem")).toHaveCount(2);
  await expectAccessible(page);
  await picture(page, "terrain-refused");
  await choose(
    page,
    "elsewhere.tif",
    heightFile({
      width: 20,
      height: 20,
      cell: 2,
      west: 500_000,
      north: 4_000_000,
      epsg: 32610,
      verticalUnit: 9001,
      noData: null,
      heightAt: () => 12,
    }),
  );
  await expect(page.getByRole("form", { name: "Height file" })).toContainText("does not reach the parcel");
  await expect(page.getByLabel("Heights are in")).toHaveValue("m");
  await expect(page.getByRole("button", { name: "Use these heights" })).toBeDisabled();
  await page.getByRole("button", { name: "Not this file" }).click();
  await expect(page.getByRole("button", { name: "Open a height file" })).toBeVisible();
});

test("a file that takes long is stopped, and nothing of it comes later", async ({ page }) => {
  await openSample(page);
  await openHeights(page);
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route("**/height-worker*", async (route) => {
    await held;
    await route.continue().catch(() => undefined);
  });
  await choose(page, "hill.tif", hill());
  await expect(page.getByText("Looking at hill.tif")).toBeVisible();
  await page.getByRole("button", { name: "Stop", exact: true }).click();
  await expect(page.getByRole("button", { name: "Open a height file" })).toBeVisible();
  letGo();
  await page.waitForTimeout(800);
  await expect(page.getByRole("form", { name: "Height file" })).toHaveCount(0);
  await expect(heights(page)).toContainText("none: the ground counts as flat");
});

test("a coordinate system that the file does not say can be typed", async ({ page }) => {
  await openSample(page);
  await openHeights(page);
  await choose(page, "nowhere.tif", hill({ epsg: null }));
  const form = page.getByRole("form", { name: "Height file" });
  await expect(form).toContainText("a coordinate system that is not known here");
  await page.getByLabel(/^Coordinate system/).fill("EPSG:32610");
  await page.getByRole("button", { name: "Look again with it" }).click();
  await expect(form).toContainText("covers the whole parcel");
  await page.getByLabel("Heights are in").selectOption("us-ft");
  await page.getByRole("button", { name: "Use these heights" }).click();
  await expect(page.getByText("The heights of nowhere.tif are in the project.")).toBeVisible();
});

test("spot heights are told, and may be taken as one plane", async ({ page }) => {
  await openSample(page, "crooked-strip", "&bench");
  await openHeights(page);
  await expect(heights(page).locator("summary")).toContainText(/spot heights/);
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

  test("heights are opened and the relief is switched on by taps", async ({ page }) => {
    test.slow();
    await openSample(page, "acre-with-notch", "&bench");
    await openHeights(page);
    await takeHill(page);
    const relief = page.getByRole("button", { name: "Relief" });
    if ((await relief.getAttribute("aria-pressed")) === "false") await relief.tap();
    await expect.poll(() => contoursDrawn(page).then(({ length }) => length)).toBeGreaterThan(3);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await expectAccessible(page);
    await page.waitForTimeout(800);
    await picture(page, "phone-terrain");
  });
});
