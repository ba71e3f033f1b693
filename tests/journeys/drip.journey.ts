import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, pixelsLike, result, rowButtons } from "./steps.ts";

const stage = (page: Page): Locator => page.getByRole("region", { name: "Drip", exact: true });
const answer = (page: Page): Locator => stage(page).locator(".enough-water");
const undo = (page: Page): Locator => page.getByRole("button", { name: /^(Undo: |Nothing to undo)/ });
const sets = /^\d+ sets?, [\d.,]+ (gal\/min|m³\/h|L\/h), \d+ % even$/;

async function openDrip(page: Page, sample = "acre-with-notch"): Promise<void> {
  await openSample(page, sample);
  await openStage(page, "Drip");
  await expect(answer(page)).toBeVisible();
}

type BucketTest = readonly [bucket: string, full: string, pressure: string];

/** What a gauge, a bucket and a watch told: each entry is a step of its own. */
async function stateWater(page: Page, still: string, ...tests: readonly BucketTest[]): Promise<void> {
  const water = stage(page).getByRole("region", { name: "The water you have" });
  await water.getByLabel("How it is known").selectOption("measured");
  await water.getByLabel("Pressure with nothing flowing").fill(still);
  await water.getByLabel("Pressure with nothing flowing").press("Enter");
  for (const [bucket, full, pressure] of tests) {
    await water.getByLabel("Bucket", { exact: true }).fill(bucket);
    await water.getByLabel("Full after", { exact: true }).fill(full);
    await water.getByLabel("Pressure", { exact: true }).fill(pressure);
    await water.getByRole("button", { name: "Add a bucket test" }).click();
    await expect(water.getByLabel("Bucket", { exact: true })).toHaveValue("");
  }
}

/** Pastes a year, January first, where the cell is. */
async function paste(cell: Locator, text: string): Promise<void> {
  await cell.evaluate((element, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text", pasted);
    element.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}

// Every step of these is a plan with its water, drawn in software.
test.beforeEach(() => test.setTimeout(120_000));

const year_inpd = "0.05 0.08 0.12 0.17 0.21 0.25 0.26 0.23 0.18 0.12 0.07 0.05";

test("two bucket tests tell whether the water is enough, and undo takes them back one by one", async ({ page }) => {
  await openDrip(page);
  await stage(page).getByLabel("How it is known").selectOption("unknown");
  await expect(answer(page)).toContainText("Say below what water you have");
  const before = await result(page, "Drip");
  expect(before).toMatch(/^\d+ emitters, /);
  await picture(page, "drip-unknown");
  await stateWater(page, "55 psi", ["5 gal", "33 s", "44"], ["5 gal", "23 s", "34 psi"]);
  await expect(answer(page)).toContainText(/^.?Yes: /);
  await expect.poll(() => result(page, "Drip")).toMatch(sets);
  await expect(stage(page).locator(".quantity-list tbody tr")).toHaveCount(2);
  await expect(stage(page).getByLabel("Pressure, bucket test 1")).toHaveValue("44 psi");
  await expect(stage(page).locator(".sets tbody")).not.toHaveCount(0);
  await expect(stage(page).locator(".drip-drawing svg").first()).toBeVisible();
  await expectAccessible(page);
  await picture(page, "drip-measured");
  for (let step = 0; step < 4; step++) await undo(page).click();
  await expect(undo(page)).toHaveAccessibleName(/not known yet$/);
  await expect.poll(() => result(page, "Drip")).toBe(before);
});

test("a pasted year tells what a vine gets a week, from when on, and whether the hours do", async ({ page }) => {
  await openDrip(page);
  await stateWater(page, "55 psi", ["5 gal", "33 s", "44 psi"], ["5 gal", "23 s", "34 psi"]);
  await stage(page).locator("summary", { hasText: "The year" }).click();
  await stage(page).getByLabel("Evapotranspiration").selectOption("entered");
  await paste(stage(page).getByLabel("ET₀ a day, January"), year_inpd);
  await expect(stage(page).getByLabel("ET₀ a day, July")).toHaveValue("0.26 in");
  const season = stage(page).getByRole("region", { name: "Water through the year" });
  await expect(season.getByText("A grown vine a week, at the peak")).toBeVisible();
  await season.locator(".figure").first().click();
  await expect(page.locator(".account")).toContainText("FAO-56");
  await page.keyboard.press("Escape");
  await expect(answer(page)).toContainText(/In July|in July/);
  await expectAccessible(page);
  await season.scrollIntoViewIfNeeded();
  await picture(page, "drip-season");
  await stage(page).getByLabel("ET₀ a day, July").fill("0.3");
  await stage(page).getByLabel("ET₀ a day, July").press("Enter");
  await expect(undo(page)).toHaveAccessibleName(/^Undo: eT₀ a day, July 0.3 in$/i);
});

test("the parts before the main line are put in another order, taken out and added", async ({ page }) => {
  await openDrip(page);
  await stage(page).locator("summary", { hasText: "Before the main line" }).click();
  const parts = stage(page).locator(".head-works > li summary");
  await expect(parts).toHaveCount(8);
  await stage(page).getByRole("button", { name: "Filter, part 5: earlier" }).click();
  await expect(parts.nth(3)).toContainText("Filter");
  await stage(page).getByRole("button", { name: "Take out Flow meter, part 7" }).click();
  await expect(parts).toHaveCount(7);
  await stage(page).getByLabel("Part to add").selectOption("regulator");
  await stage(page).getByRole("button", { name: "Add at the end" }).click();
  await expect(parts.nth(7)).toContainText("Regulator");
  await parts.nth(7).click();
  await stage(page).getByLabel("Lets through at most").fill("25 psi");
  await stage(page).getByLabel("Lets through at most").press("Enter");
  await expect(parts.nth(7)).toContainText("lets 25 psi through");
  await expectAccessible(page);
  for (let step = 0; step < 4; step++) await undo(page).click();
  await expect(undo(page)).toHaveAccessibleName("Nothing to undo");
});

test("pressures are read in kPa, bar or metres of water", async ({ page }) => {
  await openDrip(page);
  await stateWater(page, "55 psi");
  await page.getByRole("radio", { name: "Metric" }).check();
  await stage(page).locator("summary", { hasText: "More of the water" }).click();
  const pressure = stage(page).getByLabel("Pressure with nothing flowing");
  await expect(pressure).toHaveValue("379.2 kPa");
  await stage(page).getByLabel("Pressures are shown in").selectOption("bar");
  await expect(pressure).toHaveValue("3.79 bar");
  await stage(page).getByLabel("Pressures are shown in").selectOption("metres of water");
  await expect(pressure).toHaveValue("38.7 m");
});

test("on a phone the water is stated and the answer read", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openDrip(page);
  await stateWater(page, "55 psi", ["5 gal", "33 s", "44 psi"], ["5 gal", "23 s", "34 psi"]);
  await expect(answer(page)).toContainText("Yes: ");
  await stage(page).locator(".sets").scrollIntoViewIfNeeded();
  await picture(page, "drip-phone");
  const wide = await stage(page).evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await expectAccessible(page);
});

test("what would help is tried out and taken as one step", async ({ page }) => {
  await openDrip(page);
  await stateWater(page, "14 psi", ["5 gal", "2 min", "9 psi"]);
  await expect(answer(page)).toContainText(/No, there is not enough water/);
  const advice = stage(page).getByRole("region", { name: "What would help" });
  const take = advice.getByRole("button", { name: /^Take this: / });
  await expect(take.first()).toBeVisible();
  await expect(advice).toContainText("Now: ");
  await picture(page, "drip-advice");
  await expectAccessible(page);
  const name = (await take.first().getAttribute("aria-label"))?.replace("Take this: ", "") ?? "";
  const before = await answer(page).textContent();
  await take.first().click();
  await expect(undo(page)).toHaveAccessibleName(new RegExp(`^Undo: ${name.slice(0, 12)}`, "i"));
  await expect(answer(page)).not.toHaveText(before ?? "");
  await undo(page).click();
  await expect(answer(page)).toHaveText(before ?? "");
});

test("patterns of valves are compared and one is taken; the check of the first run is printed", async ({ page }) => {
  await openDrip(page);
  await stage(page).locator("summary", { hasText: "Valves compared" }).click();
  await stage(page).getByRole("button", { name: "Take a cock on each row" }).click();
  await expect(undo(page)).toHaveAccessibleName("Undo: valves: a cock on each row");
  await stage(page).locator("summary", { hasText: "Check of the first run" }).click();
  await expect(stage(page).locator(".first-run tbody tr").first()).toContainText(/(fl oz|gal)/);
  await stage(page).locator("summary", { hasText: "Highest pressures" }).click();
  await expect(stage(page).getByRole("cell", { name: /psi/ }).first()).toBeVisible();
  await expectAccessible(page);
  await stage(page).locator(".first-run").scrollIntoViewIfNeeded();
  await picture(page, "drip-first-run");
  await stage(page).getByRole("button", { name: "Print the check" }).click();
  const printed = page.frameLocator('iframe[title$="first run"]');
  await expect(printed.getByRole("columnheader", { name: "found" }).first()).toBeAttached();
});

test("the map shows the laterals by their flow while the step is open, and the side view pressure and flow along a hose", async ({
  page,
}) => {
  await openSample(page);
  await expect.poll(() => result(page, "Drip"), { timeout: 30_000 }).toContain("sets");
  const map = await page.locator(".map").boundingBox();
  if (!map) throw new Error("there is no map");
  const water = [31, 117, 144] as const;
  const before = await pixelsLike(page, map, water);
  await openStage(page, "Drip");
  await expect(stage(page).locator(".flow-legend li")).toHaveText([/within 5 %/]);
  await expect.poll(() => pixelsLike(page, map, water)).toBeGreaterThan(before + 1000);

  await page.getByRole("button", { name: /^Side view/ }).click();
  await page.getByRole("button", { name: "Water", exact: true }).click();
  const side = page.getByRole("region", { name: "Side view" });
  await expect(side.locator("svg").first()).toBeVisible();
  const told = side.locator("svg.chart");
  await expect(told).toHaveAttribute("aria-label", /^Set 1 takes/);
  await side.getByRole("combobox").selectOption({ label: "2" });
  await expect(told).toHaveAttribute("aria-label", /^Set 2 takes/);
  await rowButtons(page).nth(4).click();
  // A row has its hose and the pipes of its own set.
  await expect(told).toHaveCount(2);
  await expect(told.first()).toHaveAttribute("aria-label", /Row 5/i);
  await expect(told.last()).toHaveAttribute("aria-label", /^Set 1 takes/);
  await expectAccessible(page);
  await picture(page, "drip-side-water");
});
