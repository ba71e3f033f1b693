import { readFileSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage } from "./steps.ts";

async function openCompare(page: Page, sample = "acre-with-notch"): Promise<Locator> {
  await openSample(page, sample);
  await openStage(page, "Materials");
  await page.getByRole("button", { name: "What would a change cost?" }).click();
  const dialog = page.getByRole("dialog", { name: "What would a change cost?" });
  await expect(dialog.getByLabel("Beside this project")).toBeVisible();
  return dialog;
}

const choose = async (dialog: Locator, name: RegExp): Promise<void> => {
  const select = dialog.getByLabel("Beside this project");
  const options = await select.locator("option").allTextContents();
  const wanted = options.find((option) => name.test(option));
  if (wanted === undefined) throw new Error(`no change is called ${name}: ${options.join("; ")}`);
  await select.selectOption({ label: wanted });
};

test("longer coils are seen beside those of now, and taken over as one step", async ({ page }) => {
  const dialog = await openCompare(page);
  await choose(dialog, /5,?000 ft/);
  const line = dialog.locator(".compared tbody tr", { hasText: /^Wire, 13 ga/ });
  await expect(line).toContainText("× 1,000 ft");
  await expect(line).toContainText("× 5,000 ft");
  await expectAccessible(page);
  await picture(page, "compare-coils");
  await dialog.getByRole("button", { name: "Take this change over" }).click();
  await expect(dialog.getByRole("status")).toContainText("taken over");
  await dialog.getByRole("button", { name: "Close" }).click();
  const bought = page.locator(".materials td.to-buy");
  await expect(bought.filter({ hasText: "× 5,000 ft" }).first()).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(bought.filter({ hasText: "× 5,000 ft" })).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Nothing to undo" })).toBeVisible();
});

test("every change on offer differs from what is, in the list or in what is said", async ({ page }) => {
  const dialog = await openCompare(page);
  const select = dialog.getByLabel("Beside this project");
  const values = await select.locator("option").evaluateAll((options) => options.map((o) => o.getAttribute("value")));
  expect(values.length).toBeGreaterThan(3);
  for (const value of values.filter((each) => each !== "")) {
    await select.selectOption(value);
    await expect(dialog.locator(".compared tfoot")).toBeVisible();
    const lines = await dialog.locator(".compared tbody tr").count();
    const said = await dialog.locator(".compared-findings li").count();
    expect(lines + said, String(value)).toBeGreaterThan(0);
  }
  await dialog.getByRole("button", { name: /stay the same$/ }).click();
  await expect(dialog.getByRole("button", { name: "Show what differs" })).toBeVisible();
});

test("another project is seen beside this one, and a file that is none is refused", async ({ page }) => {
  const dialog = await openCompare(page);
  const open = async (name: string, text: string): Promise<void> => {
    const chooser = page.waitForEvent("filechooser");
    await dialog.getByRole("button", { name: "Another project file" }).click();
    await (await chooser).setFiles({ name, mimeType: "application/geo+json", buffer: Buffer.from(text) });
  };
  await open("notes.geojson", "not a project");
  await expect(dialog.getByRole("alert")).not.toBeEmpty();
  await expect(dialog.locator(".compared")).toHaveCount(0);
  await open("strip.geojson", readFileSync("samples/crooked-strip/project.geojson", "utf8"));
  await expect(dialog.locator(".compared")).toBeVisible();
  await expect(dialog.getByRole("alert")).toHaveCount(0);
  await expect(dialog.getByRole("button", { name: "Put this project in place of the open one" })).toBeVisible();
  await picture(page, "compare-file");
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(page.getByRole("button", { name: "What would a change cost?" })).toBeFocused();
});

test("on a phone the two sides stay within the page", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const dialog = await openCompare(page);
  await choose(dialog, /5,?000 ft/);
  await expect(dialog.locator(".compared")).toBeVisible();
  const overflow = await dialog.evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  await expectAccessible(page);
  await picture(page, "compare-phone");
});
