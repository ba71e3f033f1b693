import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { handle, middle, openSample, openStage } from "./steps.ts";

const undoButton = (page: Page) => page.getByRole("button", { name: /^(Undo: |Nothing to undo)/ });
const redoButton = (page: Page) => page.getByRole("button", { name: /^(Redo: |Nothing to redo)/ });

/** The project as it would be saved now. */
async function saved(page: Page): Promise<string> {
  const button = page.getByRole("button", { name: /^Save the project/ });
  const waiting = page.waitForEvent("download");
  await button.click();
  return readFileSync(await (await waiting).path(), "utf8");
}

test("ten edits of ten kinds are taken back one by one to the file as it was opened, and done again to the end", async ({
  page,
}) => {
  test.setTimeout(240_000);
  await openSample(page);
  await openStage(page, "Hand over");
  await openStage(page, "Ground");
  await openStage(page, "Trellis");
  await openStage(page, "Drip");
  const start = await saved(page);
  await expect(undoButton(page)).toHaveAccessibleName("Nothing to undo");

  const names: string[] = [];
  const done = async (name: RegExp) => {
    await expect(undoButton(page)).toHaveAccessibleName(name);
    names.push((await undoButton(page).getAttribute("aria-label")) ?? "");
  };
  await page.getByLabel("Row spacing", { exact: true }).fill("9 ft");
  await page.keyboard.press("Enter");
  await done(/^Undo: row spacing 9 ft$/);
  await page.getByLabel("Rows end", { exact: true }).selectOption("bays");
  await done(/^Undo: rows end at whole bays$/);
  const knob = await middle(handle(page));
  await page.mouse.move(knob.x, knob.y);
  await page.mouse.down();
  await page.mouse.move(knob.x + 120, knob.y + 40, { steps: 4 });
  await page.mouse.up();
  await done(/^Undo: turn the rows to [\d.]+°$/);
  await handle(page).focus();
  // Held down, a key is one step.
  for (let n = 0; n < 3; n++) await page.keyboard.press("ArrowRight");
  await done(/^Undo: turn the rows to [\d.]+°$/);
  await page.getByRole("heading", { level: 1 }).getByRole("button").click();
  await expectAccessible(page);
  await page.getByLabel("Name of the project").fill("Upper field");
  await page.keyboard.press("Enter");
  await done(/^Undo: rename to Upper field$/);
  await page.getByLabel("Setback from edges", { exact: true }).fill("14 ft");
  await page.getByLabel("Setback from edges", { exact: true }).blur();
  await done(/^Undo: setback from edges 14 ft$/);
  await page.getByRole("button", { name: "Add a wire" }).click();
  await done(/^Undo: add a wire$/);
  await page.getByLabel("Wire 4 height", { exact: true }).fill("5 ft");
  await page.getByLabel("Wire 4 height", { exact: true }).blur();
  await done(/^Undo: wire 4 height 5 ft$/);
  await page.getByLabel("Emitters at each vine", { exact: true }).fill("2");
  await page.getByLabel("Emitters at each vine", { exact: true }).blur();
  await done(/^Undo: emitters at each vine 2$/);
  await page.getByRole("button", { name: /^Turn to the best/ }).click();
  await done(/^Undo: turn the rows to /);
  expect(names).toHaveLength(10);
  const end = await saved(page);
  expect(JSON.parse(end)).not.toEqual(JSON.parse(start));

  await page.getByRole("button", { name: "List of edits" }).click();
  const list = page.getByRole("region", { name: "Edits, the newest first" });
  await expect(list.getByRole("button")).toHaveCount(11);
  await expect(list.locator('[aria-current="step"]')).toBeFocused();
  await expectAccessible(page);
  await picture(page, "list-of-edits");
  await page.keyboard.press("Escape");
  await expect(list).toHaveCount(0);
  await expect(page.getByRole("button", { name: "List of edits" })).toBeFocused();

  for (const name of [...names].reverse()) {
    await expect(undoButton(page)).toHaveAccessibleName(name);
    await page.keyboard.press("Control+z");
  }
  await expect(undoButton(page)).toHaveAccessibleName("Nothing to undo");
  await expect(page.getByText("Undone: row spacing 9 ft")).toBeAttached();
  expect(await saved(page)).toBe(start);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch");

  for (let n = 0; n < 5; n++) await page.keyboard.press("Control+Shift+z");
  for (let n = 0; n < 4; n++) await page.keyboard.press("Control+y");
  await redoButton(page).click();
  await expect(redoButton(page)).toHaveAccessibleName("Nothing to redo");
  expect(await saved(page)).toBe(end);

  // Any step is a click away.
  await page.getByRole("button", { name: "List of edits" }).click();
  await list.getByRole("button", { name: /^Start/ }).click();
  expect(await saved(page)).toBe(start);
});

test("Escape in a field takes back what was typed in this stay, however many letters it was", async ({ page }) => {
  await openSample(page);
  const field = page.getByLabel("Row spacing", { exact: true });
  await field.fill("9 ft");
  await field.press("Enter");
  await field.press("Control+a");
  await field.pressSequentially("12 ft");
  await expect(undoButton(page)).toHaveAccessibleName("Undo: row spacing 12 ft");
  await field.press("Escape");
  await expect(field).toHaveValue("9 ft");
  await expect(undoButton(page)).toHaveAccessibleName("Undo: row spacing 9 ft");
  await expect(field).toBeFocused();
});

test("Ctrl+Z is the field's own while something is typed in it, and the project's before and after", async ({
  page,
}) => {
  await openSample(page);
  const field = page.getByLabel("Headland", { exact: true });
  await page.getByLabel("Row spacing", { exact: true }).fill("9 ft");
  await page.getByLabel("Row spacing", { exact: true }).press("Enter");
  await field.click();
  await field.press("End");
  await field.pressSequentially("x");
  await expect(field).toHaveValue("20 ftx");
  await field.press("Control+z");
  await expect(field).toHaveValue("20 ft");
  await expect(undoButton(page)).toHaveAccessibleName("Undo: row spacing 9 ft");
  await field.press("Enter");
  await field.press("Control+z");
  await expect(undoButton(page)).toHaveAccessibleName("Nothing to undo");
  await expect(page.getByLabel("Row spacing", { exact: true })).toHaveValue("8 ft");
});
