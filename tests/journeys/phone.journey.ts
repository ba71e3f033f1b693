import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { bearingOf, handle, middle, openSample, result } from "./steps.ts";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

test("on a phone the first screen fits and a sample opens by a tap", async ({ page }) => {
  await page.goto("/");
  await expectAccessible(page);
  await picture(page, "phone-first-screen");
  await page.getByRole("button", { name: /Acre with a notch/ }).tap();
  await expect(handle(page)).toBeVisible();
  await expect(page.getByText("Turn to the best")).toBeAttached();
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  await expectAccessible(page);
  await page.waitForTimeout(800);
  await picture(page, "phone-sample");
});

test("on a phone a thumb turns the rows", async ({ page }) => {
  await openSample(page);
  const before = await bearingOf(handle(page));
  const rows = await result(page, "Rows");
  const from = await middle(handle(page));
  const touch = await page.context().newCDPSession(page);
  const point = (x: number, y: number) => ({ touchPoints: [{ x, y }] });
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", ...point(from.x, from.y) });
  for (let step = 1; step <= 12; step++) {
    await touch.send("Input.dispatchTouchEvent", { type: "touchMove", ...point(from.x + step * 8, from.y + step * 5) });
    await page.waitForTimeout(20);
  }
  await picture(page, "phone-dragging");
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  expect(Math.abs((await bearingOf(handle(page))) - before)).toBeGreaterThan(15);
  expect(await result(page, "Rows")).not.toBe(rows);
});

test("on a phone the steps are pulled up for more room and let down again", async ({ page }) => {
  await openSample(page);
  const grip = page.locator(".sheet-grip");
  const heightOf = async () => (await page.locator(".steps").boundingBox())?.height ?? 0;
  const low = await heightOf();
  await grip.tap();
  await expect(grip).toHaveAttribute("aria-expanded", "true");
  expect(await heightOf()).toBeGreaterThan(low * 1.3);
  await picture(page, "phone-steps");
  await grip.tap();
  expect(await heightOf()).toBeCloseTo(low, 0);
});
