import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, rowButtons } from "./steps.ts";

function rowSwitch(page: Page) {
  return page.locator(".side-things").getByRole("button", { name: "Row", exact: true });
}

test("the side view is closed until it is asked for, and says to choose a row", async ({ page }) => {
  await openSample(page);
  const bar = page.getByRole("button", { name: /^Side view/ });
  await expect(bar).toHaveAttribute("aria-expanded", "false");
  await bar.click();
  await expect(bar).toHaveAttribute("aria-expanded", "true");
  // This sample has a trench to show as long as no row is chosen.
  await rowSwitch(page).click();
  await expect(page.getByText("Choose a row, on the map or in the row list")).toBeVisible();
  await expectAccessible(page);
});

test("the chosen row is drawn from its side with every post, wire, stake, vine and emitter it has", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await openSample(page);
  await rowButtons(page).nth(4).click();
  await page.getByRole("button", { name: /^Side view/ }).click();
  const drawing = page.getByRole("img", { name: /^Row 5 from its side/ });
  await expect(drawing).toBeVisible();
  const counts = await page.locator(".row-list .is-selected td").allTextContents();
  const [, vines = NaN, linePosts = NaN] = counts.map((text) => Number.parseFloat(text));
  expect(vines).toBeGreaterThan(5);
  await expect(drawing.locator(".side-vine")).toHaveCount(vines);
  await expect(drawing.locator(".side-stake")).toHaveCount(vines);
  await expect(drawing.locator(".post-line")).toHaveCount(linePosts);
  await expect(drawing.locator(".post-end")).toHaveCount(2);
  await expect(drawing.locator(".side-wire")).toHaveCount(3);
  await expect(drawing.locator(".side-hose")).toHaveCount(1);
  await picture(page, "side-whole-row");

  await page.getByRole("button", { name: "1:50" }).click();
  await expect(drawing.locator(".side-emitter")).toHaveCount(vines);
  // To scale: the distance on the screen is that in the row, at 96 pixels an inch.
  const spacing_px = await drawing
    .locator('[data-dimension="vine-spacing"] path')
    .evaluate((path) => (path instanceof SVGPathElement ? path.getBBox().width : 0));
  const expected_px = ((6 * 0.3048) / 50 / 0.0254) * 96;
  expect(Math.abs(spacing_px - expected_px)).toBeLessThan(0.5);
  await expectAccessible(page);
  await picture(page, "side-to-scale");

  await page.getByText("Stations of row 5 as a list").click();
  await expect(page.locator(".side-stations tbody tr")).toHaveCount(vines + linePosts + 2 + 2);
  await expect(page.locator(".side-stations tbody tr").first()).toContainText("anchor, start of the row");
  await expectAccessible(page);
});

test("the drawing follows the row that is chosen and the wires that are set", async ({ page }) => {
  await openSample(page);
  await rowButtons(page).nth(4).click();
  await page.getByRole("button", { name: /^Side view/ }).click();
  await expect(page.getByRole("img", { name: /^Row 5 from its side/ })).toBeVisible();
  await rowButtons(page).nth(4).press("ArrowDown");
  await expect(page.getByRole("img", { name: /^Row 6 from its side/ })).toBeVisible();
  await page.getByRole("region", { name: "Trellis", exact: true }).getByRole("button", { name: "Trellis" }).click();
  await page.getByRole("button", { name: "Add a wire" }).click();
  await expect(page.locator(".side-drawing .side-wire")).toHaveCount(4);
  await page.getByLabel("Wire 4 height", { exact: true }).fill("6 ft");
  await expect(page.locator(".side-heights")).toContainText("foliage 6 ft");
  await page.getByRole("button", { name: /^Undo: wire 4 height/ }).click();
  await page.getByRole("button", { name: /^Undo: add a wire/ }).click();
  await expect(page.locator(".side-drawing .side-wire")).toHaveCount(3);
});

test("the drawing is saved as a file of its own and printed on a page of its own", async ({ page }) => {
  test.setTimeout(90_000);
  // Stands in for the browser's print window: what would be printed, and that it goes when printing is over.
  await page.addInitScript(() => {
    window.print = () => {
      if (window.top)
        window.top.document.documentElement.dataset.printed = document.querySelector("svg title")?.textContent;
      window.dispatchEvent(new Event("afterprint"));
    };
  });
  await openSample(page);
  await rowButtons(page).nth(4).click();
  await page.getByRole("button", { name: /^Side view/ }).click();
  await expect(page.getByRole("img", { name: /^Row 5 from its side/ })).toBeVisible();
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the drawing" }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe("acre-with-a-notch-row-5.svg");
  const text = await readFile(await saved.path(), "utf8");
  expect(text).toMatch(/^<svg xmlns=/);
  expect(text).toContain("<title>Acre with a notch, row 5</title>");
  await page.getByRole("button", { name: "Print the drawing" }).click();
  await expect(page.locator("html")).toHaveAttribute("data-printed", "Acre with a notch, row 5");
  await expect(page.locator("iframe")).toHaveCount(0);
});

test("on a phone the drawing scrolls in its own room, with the heights in view", async ({ page }) => {
  test.setTimeout(90_000);
  await page.setViewportSize({ width: 390, height: 844 });
  await openSample(page);
  await page.getByRole("button", { name: /^Side view/ }).click();
  await rowSwitch(page).click();
  // The map's handle for row 1 has a name that begins alike, and is there before the side view is.
  await page.getByRole("region", { name: "Side view" }).getByRole("button", { name: "Row 1", exact: true }).click();
  await expect(page.getByRole("img", { name: /from its side/ })).toBeVisible();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBe(0);
  await expectAccessible(page);
  await picture(page, "side-phone-whole");
  await page.getByRole("button", { name: "1:50" }).click();
  await page.locator(".side-scroll").evaluate((room) => room.scrollTo({ left: 200 }));
  await expect(page.locator(".side-heights")).toBeInViewport();
  await picture(page, "side-phone-close");
});
