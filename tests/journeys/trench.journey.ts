import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, result } from "./steps.ts";

const stage = (page: Page) => page.getByRole("region", { name: "Trench", exact: true });
const dug = /^[\d.,]+ (m|ft), [\d.,]+ (m³|yd³) to dig$/;

/** Opens a sample and its trench, and waits until that is worked out. */
async function openTrench(page: Page, sample = "acre-with-notch"): Promise<string> {
  await openSample(page, sample);
  await openStage(page, "Trench");
  await expect.poll(() => result(page, "Trench")).toMatch(dug);
  return result(page, "Trench");
}

function figure(page: Page, name: string) {
  return stage(page)
    .locator(".figures > div")
    .filter({ has: page.locator("dt", { hasText: new RegExp(`^${name}`) }) })
    .locator(".figure");
}

test("the trench step tells what is dug, how that came about, and its caution is always in view", async ({ page }) => {
  await openTrench(page);
  for (const name of ["Trench", "Depth", "Width", "Cut", "Loose", "Heap, high", "Left over", "Fittings"]) {
    await figure(page, name).click();
    await expect(page.locator(".account")).toContainText("Source:");
    await page.keyboard.press("Escape");
  }
  for (const name of ["Hours, at least", "Hours, at most", "To open in a day, at least"]) {
    await expect(figure(page, name)).toHaveText(/\d/);
  }
  await expect(stage(page).getByText("A trench that falls in can kill at any depth.")).toBeVisible();
  await picture(page, "trench-results");
  await stage(page).getByText("Pipe of the main line").scrollIntoViewIfNeeded();
  await picture(page, "trench-step");
  await expectAccessible(page);
});

test("deeper cover and sides that lean out move more earth, and undo takes them back", async ({ page }) => {
  const before = await openTrench(page);
  const cut = await figure(page, "Cut").textContent();
  await stage(page).getByLabel("Ground over the pipe").fill("4 ft");
  await stage(page).getByLabel("Ground over the pipe").press("Enter");
  await expect(figure(page, "Cut")).not.toHaveText(cut ?? "");
  await expect(stage(page).locator(".stage-mark")).toContainText("△");
  const deeper = (await figure(page, "Cut").textContent()) ?? "";
  await stage(page).locator("summary", { hasText: "More" }).click();
  await stage(page).getByLabel("Sides lean out, across to one down").fill("0.75");
  await stage(page).getByLabel("Sides lean out, across to one down").press("Enter");
  await expect(figure(page, "Cut")).not.toHaveText(deeper);
  await expect(figure(page, "Width at the top")).toBeVisible();
  await expectAccessible(page);
  for (let step = 0; step < 2; step++) await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(() => result(page, "Trench")).toBe(before);
});

test("a pipe of the tables brings its diameters; one of one's own takes what is typed", async ({ page }) => {
  await openTrench(page);
  await stage(page).getByLabel("Pipe of the main line").selectOption({ label: "PVC Schedule 40, 3 in" });
  await stage(page).locator("summary", { hasText: "More" }).click();
  await expect(stage(page).getByLabel("Pipe, outside diameter")).toHaveValue("3.5 in");
  await stage(page).getByLabel("Pipe of the main line").selectOption("own");
  await stage(page).getByLabel("Pipe, inside diameter").fill("80 mm");
  await stage(page).getByLabel("Pipe, inside diameter").press("Enter");
  await expect(stage(page).getByLabel("Pipe of the main line")).toHaveValue("own");
  await stage(page).getByLabel("Pipe, outside diameter").fill("as usual");
  await stage(page).getByLabel("Pipe, outside diameter").press("Enter");
  await expect(stage(page).getByRole("alert")).toContainText("was not understood");
});

test("a low point is gone to on the map and marked there", async ({ page }) => {
  await openTrench(page, "crooked-strip");
  const lows = stage(page).getByRole("region", { name: "Low points" });
  const first = lows.getByRole("button", { name: /along$/ }).first();
  await first.scrollIntoViewIfNeeded();
  await first.click();
  await expect(page.locator(".trench-place")).toBeVisible();
  await page.waitForTimeout(800);
  await picture(page, "trench-low-point");
  await expectAccessible(page);
});

test("a crossing is priced, marked and told", async ({ page }) => {
  await openSample(page, "brook-and-two-blocks");
  await openStage(page, "Main line");
  await expect.poll(() => result(page, "Main line")).toMatch(/row tees$/);
  await page.waitForTimeout(800);
  await picture(page, "trench-crossing");
  const crossings = page
    .getByRole("region", { name: "Main line", exact: true })
    .locator(".figures > div")
    .filter({ has: page.locator("dt", { hasText: /^Crossings/ }) })
    .locator(".figure");
  expect(Number(await crossings.textContent())).toBeGreaterThan(0);
});

test("on a phone the trench is set and read", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openTrench(page);
  await stage(page).getByText("Soil", { exact: true }).scrollIntoViewIfNeeded();
  await expect(stage(page).getByLabel("Soil", { exact: true })).toBeVisible();
  await picture(page, "trench-phone");
  await expectAccessible(page);
});
