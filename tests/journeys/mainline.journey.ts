import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { handle, middle, openSample, openStage, result } from "./steps.ts";

const stage = (page: Page) => page.getByRole("region", { name: "Main line", exact: true });
const laid = /^[\d.,]+ (m|ft), \d+ row tees$/;

/** Opens a sample and its main line, and waits until that is laid. */
async function openMainline(page: Page): Promise<string> {
  await openSample(page);
  await openStage(page, "Main line");
  await expect.poll(() => result(page, "Main line")).toMatch(laid);
  return result(page, "Main line");
}

test("the main line is laid beside the page and drawn under the rows, and every number tells how it came about", async ({
  page,
}) => {
  await openMainline(page);
  await expect(stage(page).locator(".route-words")).toHaveText(/^The route was found/);
  for (const name of ["Main line", "Row tees", "Crossings", "Water at the start", "Water at the end"]) {
    const line = stage(page)
      .locator(".figures > div")
      .filter({ has: page.locator("dt", { hasText: new RegExp(`^${name}`) }) });
    await line.locator(".figure").click();
    await expect(page.locator(".account")).toContainText("Source:");
    await page.keyboard.press("Escape");
  }
  await picture(page, "mainline-step");
  await expectAccessible(page);
});

test("while rows are turned the route waits, and follows when they are let go", async ({ page }) => {
  const before = await openMainline(page);
  const knob = await middle(handle(page));
  await page.mouse.move(knob.x, knob.y);
  await page.mouse.down();
  await page.mouse.move(knob.x + 60, knob.y + 20, { steps: 12 });
  await expect(page.getByText("The route follows when you let go.").first()).toBeVisible();
  await expect.poll(() => result(page, "Main line")).toBe("follows when you let go");
  await picture(page, "mainline-waits");
  await page.mouse.up();
  await expect.poll(() => result(page, "Main line")).toMatch(laid);
  expect(await result(page, "Main line")).not.toBe(before);
});

test("the line that was found is taken over, dragged with its length following, and found again", async ({ page }) => {
  const before = await openMainline(page);
  await stage(page).getByRole("button", { name: "Take this line over to change it" }).click();
  const corner = page.locator(".drawing-handle.is-corner").nth(2);
  await expect(corner).toBeVisible();
  await expect(stage(page).locator(".route-words")).toHaveText(/^The route keeps to the line/);
  const at = await middle(corner);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 25, at.y - 30, { steps: 12 });
  const follows = async () => {
    const now = await result(page, "Main line");
    return laid.test(now) && now !== before;
  };
  await expect.poll(follows).toBe(true);
  await picture(page, "mainline-dragged");
  await page.mouse.up();
  await expect.poll(follows).toBe(true);
  await stage(page).getByRole("button", { name: "Let it be found again" }).click();
  await expect.poll(() => result(page, "Main line")).toBe(before);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(follows).toBe(true);
});

test("ends of rows are settled and left to the route again, and a wrong row gets a sentence", async ({ page }) => {
  await openMainline(page);
  const ends = stage(page).getByRole("region", { name: "Ends that are settled" });
  const atTheEnd = stage(page)
    .locator(".figures > div")
    .filter({ has: page.locator("dt", { hasText: /^Water at the end/ }) })
    .locator("dd");
  const before = await atTheEnd.textContent();
  await ends.getByLabel("Rows").fill("twelve");
  await ends.getByRole("button", { name: "Settle" }).click();
  await expect(ends.getByRole("alert")).toContainText("was not understood");
  await ends.getByLabel("Rows").fill("2-12");
  await ends.getByLabel("End that meets the water").selectOption("end");
  await ends.getByRole("button", { name: "Settle" }).click();
  await expect(ends.getByText("rows 2 to 12 at the end")).toBeVisible();
  await expect(atTheEnd).not.toHaveText(before ?? "");
  await picture(page, "mainline-pinned");
  await expectAccessible(page);
  await ends.getByRole("button", { name: "Leave rows 2 to 12 at the end to the route" }).click();
  await expect(atTheEnd).toHaveText(before ?? "");
});

test("prices of trench and crossings make a cost, with its account", async ({ page }) => {
  await openMainline(page);
  await stage(page).getByLabel("A foot of trench, dug and filled").fill("3");
  await stage(page).getByLabel("A foot of trench, dug and filled").press("Enter");
  const cost = stage(page)
    .locator(".figures > div")
    .filter({ has: page.locator("dt", { hasText: /^Cost/ }) });
  const length_ft = Number((await result(page, "Main line")).replace(/ ft.*$/, "").replaceAll(",", ""));
  const told = Number((await cost.locator(".figure").textContent())?.replace(/[^\d.]/g, ""));
  expect(Math.abs(told - 3 * length_ft)).toBeLessThan(0.02);
  await cost.locator(".figure").click();
  await expect(page.locator(".account")).toContainText("Not priced");
});

test("on a small window and on a phone the line is still told and drawn", async ({ page }) => {
  await openMainline(page);
  await page.setViewportSize({ width: 640, height: 400 });
  await expectAccessible(page);
  await picture(page, "mainline-small");
  await page.setViewportSize({ width: 390, height: 844 });
  await stage(page).getByText("Lane past the rows").scrollIntoViewIfNeeded();
  await expect(stage(page).getByLabel("Lane past the rows")).toBeVisible();
  await expectAccessible(page);
  await picture(page, "mainline-phone");
});

test("pointing at the trench marks its place on the map", async ({ page }) => {
  await openMainline(page);
  const map = page.locator(".map canvas").first();
  const box = await map.boundingBox();
  if (!box) throw new Error("no map");
  await stage(page).getByRole("button", { name: "Take this line over to change it" }).click();
  const corners = page.locator(".drawing-handle.is-corner");
  const [from, to] = [await middle(corners.nth(3)), await middle(corners.nth(4))];
  await page.getByRole("button", { name: "Close" }).click();
  await page.mouse.move(0.7 * from.x + 0.3 * to.x, 0.7 * from.y + 0.3 * to.y);
  await expect(page.locator(".trench-place")).toBeVisible();
  await picture(page, "mainline-pointed");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height - 8);
  await expect(page.locator(".trench-place")).toBeHidden();
});
