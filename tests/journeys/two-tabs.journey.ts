import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { expectKept, expectOpen, keepingStatus, keptProjects, rowSpacing, spaceRows } from "./keeping-steps.ts";
import { handle, openSample } from "./steps.ts";

/** A project that is kept, open in one tab, and the same in a second. */
async function openTwice(page: Page): Promise<Page> {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  const second = await page.context().newPage();
  await second.goto(page.url());
  await expectOpen(second, "Acre with a notch");
  return second;
}

/** Row spacing of each kept project. */
async function keptSpacings(page: Page): Promise<Record<string, string | undefined>> {
  const kept = await keptProjects(page);
  return Object.fromEntries(kept.map(({ name, text }) => [name, /"rowSpacing":"([^"]*)"/.exec(text)?.[1]]));
}

/** Browsers without locks: only the revision tells that another tab has written. */
async function withoutLocks(page: Page): Promise<void> {
  await page.context().addInitScript(() => {
    Object.defineProperty(Navigator.prototype, "locks", { value: undefined });
    Object.defineProperty(window, "BroadcastChannel", { value: undefined });
  });
}

test("a second tab on a project shows it, follows what the first one does, and refuses edits with a sentence", async ({
  page,
}) => {
  const second = await openTwice(page);
  const bar = second.getByRole("region", { name: "Open in another tab" });
  await expect(bar).toContainText("This project is open in another tab.");
  await expect(keepingStatus(page)).toHaveText("Kept");
  await expectAccessible(second);
  await picture(second, "second-tab");

  await spaceRows(page, "10 ft");
  await expect(rowSpacing(second)).toHaveValue("10 ft");

  await spaceRows(second, "12 ft");
  await expect(second.getByRole("status").filter({ hasText: "nothing was changed here" })).toBeVisible();
  await handle(second).press("ArrowRight");
  await expectAccessible(second);
  await picture(second, "second-tab-refuses");
  await page.waitForTimeout(1000);
  const kept = await keptProjects(page);
  expect(kept).toHaveLength(1);
  expect(kept[0]?.text).toContain('"10 ft"');
});

test("“Work here instead” brings over the other tab's last change, and that tab becomes the one that reads", async ({
  page,
}) => {
  const second = await openTwice(page);
  await spaceRows(page, "10 ft");
  await second.getByRole("button", { name: "Work here instead" }).click();
  await expect(second.getByRole("region", { name: "Open in another tab" })).toBeHidden();
  await expect(rowSpacing(second)).toHaveValue("10 ft");
  await expect(page.getByRole("region", { name: "Open in another tab" })).toBeVisible();
  await spaceRows(second, "11 ft");
  await expectKept(second);
  await expect(rowSpacing(page)).toHaveValue("11 ft");

  await page.getByRole("button", { name: "Work here instead" }).click();
  await expect(second.getByRole("region", { name: "Open in another tab" })).toBeVisible();
  await spaceRows(page, "7 ft");
  await expectKept(page);
  expect(await keptSpacings(page)).toEqual({ "Acre with a notch": "7 ft" });
});

test("“Make a copy” goes on with a project of its own, and the first one stays as it is", async ({ page }) => {
  const second = await openTwice(page);
  await second.getByRole("button", { name: "Make a copy" }).click();
  await expect(second.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch (copy)");
  await spaceRows(second, "12 ft");
  await expectKept(second);
  await expectKept(page);
  expect(await keptSpacings(page)).toEqual({ "Acre with a notch": "9 ft", "Acre with a notch (copy)": "12 ft" });
});

test("when the first tab is closed the second one may write by itself", async ({ page }) => {
  const second = await openTwice(page);
  await page.close();
  await expect(second.getByRole("region", { name: "Open in another tab" })).toBeHidden();
  await spaceRows(second, "12 ft");
  await expectKept(second);
  await second.reload();
  await expect(rowSpacing(second)).toHaveValue("12 ft");
});

test("a tab that hangs is taken over all the same, and what it had is not written over when it wakes", async ({
  page,
}) => {
  const second = await openTwice(page);
  // Nothing of the first tab runs for a while.
  const hung = page.evaluate(() => {
    const until = performance.now() + 9000;
    while (performance.now() < until);
  });
  await second.getByRole("button", { name: "Work here instead" }).click();
  await expect(second.getByRole("region", { name: "Open in another tab" })).toBeHidden();
  await spaceRows(second, "12 ft");
  await expectKept(second);
  await hung;
  await expect(page.getByRole("region", { name: "Open in another tab" })).toBeVisible();
  await expect(rowSpacing(page)).toHaveValue("12 ft");
  expect(await keptProjects(second)).toHaveLength(1);
});

test("without locks the tab that comes second with its change keeps it as a copy and says so", async ({ page }) => {
  await withoutLocks(page);
  const second = await openTwice(page);
  await spaceRows(page, "10 ft");
  await expectKept(page);
  await spaceRows(second, "12 ft");
  await expect(second.getByRole("status").filter({ hasText: "Nothing was written over" })).toBeVisible();
  await expect(second.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch (copy)");
  await expectKept(second);
  await picture(second, "kept-as-copy");
  expect(await keptSpacings(page)).toEqual({ "Acre with a notch": "10 ft", "Acre with a notch (copy)": "12 ft" });
});

test("a project that is open in another tab is neither renamed nor deleted from the list", async ({ page }) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  const second = await page.context().newPage();
  await second.goto("/");
  await second.getByRole("button", { name: "Delete Acre with a notch" }).click();
  await expect(second.getByRole("status")).toContainText("open in another tab");
  expect((await keptProjects(second))[0]?.deleted).toBe(false);
});
