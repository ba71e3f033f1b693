import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { middle, openSample, rowButtons } from "./steps.ts";

/** The side view with the trench of the first sample in it. */
async function openTrench(page: Page, name?: string): Promise<void> {
  await openSample(page, name);
  await page.getByRole("button", { name: /^Side view/ }).click();
  await expect(drawing(page)).toBeVisible();
}

function drawing(page: Page) {
  return page.getByRole("img", { name: /^The trench of .* from its side/ });
}

function told(page: Page) {
  return page.locator(".trench-told");
}

test("while no row is chosen the side view shows the trench, and a row once one is; a switch shows either", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await openTrench(page);
  await expect(page.getByRole("button", { name: "Trench", exact: true, pressed: true })).toBeVisible();
  await picture(page, "trench-profile");
  await expectAccessible(page);
  await rowButtons(page).nth(4).click();
  await expect(page.getByRole("img", { name: /^Row 5 from its side/ })).toBeVisible();
  await page.locator(".side-things").getByRole("button", { name: "Trench" }).click();
  await expect(drawing(page)).toBeVisible();
});

test("a place on the chart is shown on the map, and one on the map on the chart, both told in words", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await openTrench(page);
  const chart = page.locator(".trench-chart");
  const box = await chart.boundingBox();
  if (!box) throw new Error("there is no chart");
  await page.mouse.move(box.x + box.width / 2, box.y + 60);
  await expect(told(page)).toContainText(/^The main line, [\d.]+ ft along: .* to dig/);
  await expect(page.locator(".trench-cursor")).toHaveCount(1);
  const mark = page.locator(".trench-place");
  await expect(mark).toBeVisible();
  await picture(page, "trench-pointed");
  const at = await middle(mark);
  const words = await told(page).textContent();

  await page.mouse.move(box.x + box.width / 2, box.y - 200);
  await expect(mark).toBeHidden();
  await expect(page.locator(".trench-cursor")).toHaveCount(0);

  // The place the mark was at is that place of the trench, within what a pixel of the map is long.
  await page.mouse.move(at.x, at.y);
  await expect(page.locator(".trench-cursor")).toHaveCount(1);
  const station = (text: string | null) => Number.parseFloat(/, ([\d.]+) ft along/.exec(text ?? "")?.[1] ?? "");
  expect(Math.abs(station(await told(page).textContent()) - station(words))).toBeLessThan(6);
  const cursor = await page.locator(".trench-cursor").boundingBox();
  expect(Math.abs(Number(cursor?.x) - (box.x + box.width / 2))).toBeLessThan(12);
});

test("arrow keys go along the trench by the slider and station by station in the list", async ({ page }) => {
  test.setTimeout(90_000);
  await openTrench(page);
  const slider = page.getByRole("slider", { name: "Place along the trench" });
  await slider.press("Home");
  await slider.press("ArrowRight");
  await expect(slider).toHaveAttribute("aria-valuetext", "1 ft");
  await expect(told(page)).toContainText("The main line, 1.0 ft along");
  await expect(page.locator(".trench-place")).toBeVisible();
  await page.getByText("Stations of the trench as a list").click();
  const first = page.locator(".side-stations tbody tr").first();
  await expect(first).toContainText("water source, Well");
  await first.getByRole("button").press("ArrowDown");
  const second = page.locator(".side-stations tbody tr").nth(1).getByRole("button");
  await expect(second).toBeFocused();
  await expect(page.locator(".trench-cursor")).toHaveCount(1);
  await expectAccessible(page);
  await picture(page, "trench-stations");
});

test("the scale and the heights are chosen, and the drawing is saved as a file of its own", async ({ page }) => {
  test.setTimeout(90_000);
  await openTrench(page);
  await page.getByRole("button", { name: "1:200" }).click();
  await page.getByRole("combobox", { name: "Heights" }).selectOption({ label: "5 times" });
  await expect(page.locator(".side-note")).toContainText("Lengths 1:200, heights drawn 5 times as large.");
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the drawing" }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe("acre-with-a-notch-trench-main.svg");
  const text = await readFile(await saved.path(), "utf8");
  expect(text).toMatch(/^<svg xmlns=/);
  expect(text).toContain("<title>Acre with a notch, trench of the main line</title>");
  const words = text.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
  expect(words).toContain("Lengths 1:200, heights drawn 5 times as large.");
  expect(words).toContain("Call before you dig");
});

test("a branch is chosen by name", async ({ page }) => {
  test.setTimeout(90_000);
  await openTrench(page, "brook-and-two-blocks");
  await page.getByRole("combobox", { name: "Branch" }).selectOption("a");
  await expect(page.getByRole("img", { name: /^The trench of branch a from its side/ })).toBeVisible();
  await picture(page, "trench-branch");
});

test("on a phone the profile has the room of the map, and a tap shows the place in words", async ({ page }) => {
  test.setTimeout(90_000);
  await page.setViewportSize({ width: 390, height: 844 });
  await openTrench(page);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBe(0);
  await page.locator(".trench-chart").click({ position: { x: 120, y: 70 } });
  await expect(told(page)).toContainText("The main line");
  await expectAccessible(page);
  await picture(page, "trench-phone");
});
