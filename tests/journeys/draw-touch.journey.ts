import { bar, choose, dragByTouch, onMap, panel, savedOf, startEmpty, undo } from "./drawing-steps.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { handle, middle, result } from "./steps.ts";

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
  actionTimeout: 10_000,
});

const corners = [
  [0.25, 0.3],
  [0.75, 0.3],
  [0.72, 0.56],
  [0.28, 0.56],
] as const;

/** Least side of what a thumb must hit, pixels. */
const thumb_px = 44;

test("on a phone a parcel is drawn by taps, bent by a thumb and taken back", async ({ page }) => {
  test.slow();
  await startEmpty(page);
  await expectAccessible(page);
  await page.getByLabel("Latitude and longitude").fill("38.2914, -122.4580");
  await page.getByRole("button", { name: "Go there" }).tap();
  await picture(page, "phone-draw-empty");
  await page.getByRole("button", { name: "Draw the parcel" }).tap();
  await expect(bar(page)).toBeVisible();
  for (const button of await bar(page).getByRole("button").all()) {
    expect((await button.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(thumb_px);
  }
  // The steps make room for the map.
  await page.waitForTimeout(400);
  for (const [i, [across, down]] of corners.entries()) {
    const { x, y } = await onMap(page, across, down);
    await page.touchscreen.tap(x, y);
    await expect(bar(page)).toContainText(`${i + 1} corner`);
    await page.waitForTimeout(500);
  }
  await expectAccessible(page);
  await picture(page, "phone-draw-sketch");
  await page.getByRole("button", { name: "Take back the last corner" }).tap();
  await expect(bar(page)).toContainText("3 corners");
  const { x, y } = await onMap(page, 0.3, 0.56);
  await page.touchscreen.tap(x, y);
  await expect(bar(page)).toContainText("4 corners");
  await page.getByRole("button", { name: "Finish" }).tap();
  await expect(panel(page).getByRole("heading", { name: "Parcel 1" })).toBeVisible();
  await expect(handle(page)).toBeVisible();
  expect(Number.parseInt(await result(page, "Rows"), 10)).toBeGreaterThan(5);
  await page.waitForTimeout(600);
  await expectAccessible(page);
  await picture(page, "phone-draw-parcel");

  const corner = page.locator('.drawing-handle[aria-label="Corner 2"]');
  const size = await corner.boundingBox();
  expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(thumb_px);
  const before = await result(page, "Ground");
  const from = await middle(corner);
  const touch = await page.context().newCDPSession(page);
  await dragByTouch(touch, page, from, { x: from.x - 34, y: from.y - 26 });
  await expect.poll(() => result(page, "Ground")).not.toBe(before);
  await picture(page, "phone-draw-bent");
  await undo(page);
  await expect.poll(() => result(page, "Ground")).toBe(before);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});

test("on a phone an obstacle is chosen from the palette and set by one tap, without snapping if so wished", async ({
  page,
}) => {
  await startEmpty(page);
  await page.getByRole("button", { name: "Draw", exact: true }).tap();
  await expectAccessible(page);
  await picture(page, "phone-draw-palette");
  await page.getByRole("button", { name: "Draw", exact: true }).tap();
  await choose(page, "Obstacle: spot");
  await page.getByLabel("Snap").tap();
  await expect(page.getByLabel("Snap")).not.toBeChecked();
  const { x, y } = await onMap(page, 0.5, 0.35);
  await page.touchscreen.tap(x, y);
  await expect(panel(page).getByRole("heading", { name: "Obstacle 1" })).toBeVisible();
  await expectAccessible(page);
  await panel(page).getByLabel("Distance kept").fill("4.5");
  await panel(page).getByLabel("Distance kept").press("Enter");
  await panel(page).getByText("Wires run past it").tap();
  const [obstacle] = await savedOf(page, "obstacle");
  expect(obstacle?.geometry?.type).toBe("Point");
  expect(obstacle?.properties.distance).toBe("4.5 m");
  expect(obstacle?.properties.wiresPass).toBe(true);
});
