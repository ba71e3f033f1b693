import { expect, expectAccessible, picture, test } from "./guarded.ts";
import {
  expectKept,
  expectOpen,
  keepingStatus,
  keptProjects,
  openMenu,
  rowSpacing,
  spaceRows,
} from "./keeping-steps.ts";
import { openSample } from "./steps.ts";

test("a sample is kept from its first change on, and loading the page again brings it back as it was left", async ({
  page,
}) => {
  await openSample(page);
  await expect(keepingStatus(page)).toHaveText("Unchanged");
  expect(new URL(page.url()).hash).toBe("");
  await spaceRows(page, "9 ft");
  await expectKept(page);
  expect(page.url()).toMatch(/\/#project=[0-9a-f-]{36}$/);
  await expectAccessible(page);
  await page.reload();
  await expectOpen(page, "Acre with a notch");
  await expect(rowSpacing(page)).toHaveValue("9 ft");
  expect(await keptProjects(page)).toHaveLength(1);
});

test("a sample that was only looked at is not kept", async ({ page }) => {
  await openSample(page);
  await page.waitForTimeout(1200);
  expect(await keptProjects(page)).toEqual([]);
});

test("when the page dies in the middle of an edit, all that was done a second before is there again", async ({
  page,
  context,
}) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await page.waitForTimeout(1000);
  const address = page.url();
  await rowSpacing(page).fill("10 ft");
  const cdp = await context.newCDPSession(page);
  const died = page.waitForEvent("crash");
  void cdp.send("Page.crash").catch(() => undefined);
  await died;

  const next = await context.newPage();
  await next.goto(address);
  await expectOpen(next, "Acre with a notch");
  await expect(rowSpacing(next)).toHaveValue(/^(9|10) ft$/);
  await expectKept(next);
});

test("a page that is closed right after an edit has kept it", async ({ page, context }) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  const address = page.url();
  await rowSpacing(page).fill("11 ft");
  await page.goto("about:blank");
  const next = await context.newPage();
  await next.goto(address);
  await expect(rowSpacing(next)).toHaveValue("11 ft");
});

test("several projects are listed with name, date and drawing; they are renamed, duplicated, deleted and brought back", async ({
  page,
}) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  await openSample(page, "crooked-strip");
  await spaceRows(page, "3 m");
  await expectKept(page);
  await page.goto("/");
  const own = page.locator(".own-projects");
  await expect(own.locator(".kept-name")).toHaveText(["Crooked strip", "Acre with a notch"]);
  const drawing = await own
    .locator("img")
    .first()
    .evaluate((image: HTMLImageElement) => image.naturalWidth);
  expect(drawing).toBeGreaterThan(0);
  await expectAccessible(page);
  await picture(page, "first-screen-own-projects");

  await own.getByRole("button", { name: "Rename Crooked strip" }).click();
  await page.getByLabel("New name of Crooked strip").fill("Long field");
  await page.keyboard.press("Enter");
  await expect(own.locator(".kept-name").first()).toHaveText("Long field");
  expect((await keptProjects(page)).find(({ name }) => name === "Long field")?.text).toContain('"name":"Long field"');

  await own.getByRole("button", { name: "Duplicate Long field" }).click();
  await expect(own.locator(".kept-name").first()).toHaveText("Long field (copy)");
  await own.getByRole("button", { name: "Delete Long field", exact: true }).click();
  await expect(page.getByRole("status")).toContainText("Deleted: Long field.");
  await expect(own.locator(".project-list").first().locator(".kept-name")).toHaveText([
    "Long field (copy)",
    "Acre with a notch",
  ]);
  await expectAccessible(page);
  await picture(page, "first-screen-deleted");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(own.getByRole("button", { name: "Delete Long field", exact: true })).toBeVisible();
  await own.getByRole("button", { name: "Delete Long field (copy)" }).click();
  await own.getByText("Deleted (1)").click();
  await own.getByRole("button", { name: "Bring back Long field (copy)" }).click();
  await own.getByRole("button", { name: "Delete Long field (copy)" }).click();
  await own.getByText("Deleted (1)").click();
  await own.getByRole("button", { name: /^Empty/ }).click();
  await expect(own.getByText("Deleted (1)")).toHaveCount(0);
  expect((await keptProjects(page)).map(({ name }) => name).sort()).toEqual(["Acre with a notch", "Long field"]);

  await own.getByRole("button", { name: /^Long field/ }).click();
  await expectOpen(page, "Long field");
  await expect(rowSpacing(page)).toHaveValue("3 m");
});

test("the project on the page is deleted from the menu: the first screen comes, and undo brings it back", async ({
  page,
}) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  const menu = await openMenu(page);
  await expectAccessible(page);
  await picture(page, "project-menu");
  await menu.getByRole("button", { name: "Delete Acre with a notch" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Tautrow");
  expect(new URL(page.url()).hash).toBe("");
  await page.getByRole("button", { name: "Undo" }).click();
  // Not the sample of that name, which stands on the same screen.
  const own = page.locator(".own-projects");
  await own.getByRole("button", { name: /^Acre with a notch/ }).click();
  await expect(rowSpacing(page)).toHaveValue("9 ft");
});

test("renaming the open project from the list is an edit that undo takes back", async ({ page }) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  const menu = await openMenu(page);
  await menu.getByRole("button", { name: "Rename Acre with a notch" }).click();
  await page.getByLabel("New name of Acre with a notch").fill("Home acre");
  await page.keyboard.press("Enter");
  await expect(menu.locator(".kept-name").first()).toHaveText("Home acre");
  await menu.getByRole("button", { name: "Close" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Home acre");
  await page.getByRole("button", { name: /^Undo: rename/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch");
  await expectKept(page);
  await expect.poll(async () => (await keptProjects(page))[0]?.name).toBe("Acre with a notch");
});

test("an empty map begins in the units of one's choice and is kept from its first change on", async ({ page }) => {
  await page.goto("/");
  await expect(page.getByRole("radio", { name: "US" })).toBeChecked();
  await page.getByRole("radio", { name: "Metric" }).check();
  await page.getByRole("button", { name: "Start with an empty map" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("New parcel");
  await expect(keepingStatus(page)).toHaveText("Unchanged");
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

  test("one's own projects, the menu and what there is to be told fit the width", async ({ page }) => {
    const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    await openSample(page);
    await spaceRows(page, "9 ft");
    await expectKept(page);
    const menu = await openMenu(page);
    expect(await overflow()).toBeLessThanOrEqual(0);
    await expectAccessible(page);
    await picture(page, "phone-project-menu");
    await menu.getByRole("button", { name: "Duplicate Acre with a notch" }).tap();
    await menu.getByRole("button", { name: "Close", exact: true }).tap();
    await expect(page.getByRole("status").filter({ hasText: "project of its own" })).toBeVisible();
    await expectAccessible(page);
    await picture(page, "phone-message");
    const second = await page.context().newPage();
    await second.goto(page.url());
    await expect(second.getByRole("region", { name: "Open in another tab" })).toBeVisible();
    await picture(second, "phone-second-tab");
    await page.goto("/");
    await expect(page.locator(".own-projects .kept-name")).toHaveCount(2);
    expect(await overflow()).toBeLessThanOrEqual(0);
    await expectAccessible(page);
    await picture(page, "phone-own-projects");
  });
});
