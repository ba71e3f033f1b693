import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, rowButtons } from "./steps.ts";

const stages = ["Ground", "Rows", "Main line", "Trellis", "Drip", "Materials", "Hand over"] as const;

function account(page: Page): Locator {
  return page.getByRole("tooltip");
}

function step(page: Page, name: string): Locator {
  return page.getByRole("region", { name, exact: true });
}

/** The account that is shown tells the number it is about, a formula, and a source. */
async function expectTold(page: Page, figure: Locator): Promise<void> {
  const told = account(page);
  await expect(told).toBeVisible();
  await expect(told.locator("strong")).toHaveText((await figure.textContent()) ?? "?");
  await expect(told).toContainText(/Source: \S/);
  await expect(told.locator("p").nth(1)).toHaveText(/\.$/);
  await expect(figure).toHaveAttribute("aria-describedby", "figure-account");
}

/** Every number in an open step: what is told of it when it has the focus. */
function toldOnFocus(region: Locator) {
  return region.evaluate(async (stage) => {
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const told = [];
    // Parts that are folded away have numbers too.
    for (const part of stage.querySelectorAll("details")) part.open = true;
    await frame();
    for (const figure of stage.querySelectorAll<HTMLElement>(".stage-body .figure:not(.row-list .figure)")) {
      figure.focus();
      await frame();
      await frame();
      const shown = document.getElementById("figure-account");
      told.push({
        value: figure.textContent,
        title: shown?.querySelector("strong")?.textContent ?? null,
        formula: shown?.querySelectorAll("p")[1]?.textContent ?? "",
        source: shown?.querySelector(".account-source")?.textContent ?? "",
        isDescribed: figure.getAttribute("aria-describedby") === shown?.id,
      });
    }
    return told;
  });
}

test("every number of every open step tells on focus how it came about, and axe finds nothing wrong with any", async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openSample(page);
  await expect(page.getByText("Turn to the best")).toBeVisible();
  await openStage(page, "Ground");
  // Worked out a moment after the rows.
  await expect(step(page, "Ground").getByText("being worked out")).toHaveCount(0);
  let asked = 0;
  for (const name of stages) {
    await openStage(page, name);
    const told = await toldOnFocus(step(page, name));
    for (const { value, title, formula, source, isDescribed } of told) {
      expect(title).toBe(value);
      expect(formula).toMatch(/^[A-Z].*\.$/s);
      expect(source).toMatch(/^Source: \S/);
      expect(isDescribed).toBe(true);
    }
    asked += told.length;
    await page.keyboard.press("Escape");
    await expect(account(page)).toHaveCount(0);
    await step(page, name).scrollIntoViewIfNeeded();
    await picture(page, `step-${name.toLowerCase().replace(" ", "-")}`);
  }
  expect(asked).toBeGreaterThan(35);
  // All steps are open by now.
  await expectAccessible(page);
});

test("a number that is pointed at tells of itself as long as the pointer is on it or on what it tells", async ({
  page,
}) => {
  await openSample(page);
  const figure = step(page, "Rows").locator(".stage-result .figure").nth(1);
  await figure.hover();
  await expectTold(page, figure);
  await expectAccessible(page);
  await picture(page, "figure-told");
  await account(page).hover();
  await page.waitForTimeout(600);
  await expect(account(page)).toBeVisible();
  await page.mouse.move(900, 500);
  await expect(account(page)).toHaveCount(0);
});

test("Escape sends an account away and leaves the focus on its number; a click holds it until the next", async ({
  page,
}) => {
  await openSample(page);
  const figure = step(page, "Rows").locator(".figures .figure").first();
  await figure.click();
  await expectTold(page, figure);
  await page.mouse.move(900, 500);
  await page.waitForTimeout(500);
  await expect(account(page)).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(account(page)).toHaveCount(0);
  await expect(figure).toBeFocused();
  await figure.click();
  await expect(account(page)).toBeVisible();
  await figure.click();
  await expect(account(page)).toHaveCount(0);
});

test("the inputs that are told give the number: row length times row spacing is the planted area", async ({ page }) => {
  await openSample(page);
  await page.getByRole("radio", { name: "Metric" }).check();
  const figure = step(page, "Rows").locator(".figures > div").filter({ hasText: "Planted area" }).locator(".figure");
  await figure.click();
  const inputs = await account(page).locator("dd").allTextContents();
  const [length_m = NaN, spacing_m = NaN] = inputs.map((text) => Number.parseFloat(text.replace(/,/g, "")));
  const area_ha = Number.parseFloat((await figure.textContent()) ?? "");
  // Shown lengths are rounded to a centimetre, the area to ten square metres.
  expect(Math.abs((length_m * spacing_m) / 10_000 - area_ha)).toBeLessThan(0.001);
});

test("numbers in the row table are reached by arrow keys and tell of their row", async ({ page }) => {
  await openSample(page);
  await rowButtons(page).nth(2).focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowRight");
  const cell = page.locator(".row-list .is-selected td").first().getByRole("button");
  await expect(cell).toBeFocused();
  await expectTold(page, cell);
  await expect(account(page)).toContainText("length of row 4");
  await page.keyboard.press("ArrowRight");
  await expect(account(page)).toContainText("vines of row 4");
  await expectAccessible(page);
  await picture(page, "row-table-told");
  // The table is one stop for the tab key.
  await page.keyboard.press("Tab");
  await expect(page.locator(".row-list").locator(":focus")).toHaveCount(0);
});

test("accounts follow the units that are shown", async ({ page }) => {
  await openSample(page);
  const figure = step(page, "Rows").locator(".figures .figure").nth(1);
  await figure.click();
  await expect(account(page)).toContainText(" ft");
  await page.getByRole("radio", { name: "Metric" }).check();
  await figure.click();
  await expect(account(page)).toContainText(/ m \(39/);
  await expect(account(page)).not.toContainText(" ft");
});

test("the numbers in the line of a closed step are reached from its name by arrow keys", async ({ page }) => {
  await openSample(page);
  await step(page, "Drip").getByRole("button", { name: "Drip", exact: true }).focus();
  await page.keyboard.press("ArrowRight");
  const figure = step(page, "Drip").locator(".stage-result .figure").first();
  await expect(figure).toBeFocused();
  await expectTold(page, figure);
  await page.keyboard.press("ArrowRight");
  await expectTold(page, step(page, "Drip").locator(".stage-result .figure").nth(1));
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("ArrowLeft");
  await expect(step(page, "Drip").getByRole("button", { name: "Drip", exact: true })).toBeFocused();
  await expect(account(page)).toHaveCount(0);
});
