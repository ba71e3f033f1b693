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
  await expect.poll(heightOf).toBeCloseTo(low, 0);
});

test("on a phone the steps follow a finger on their grip and stay at the nearest of three heights", async ({
  page,
}) => {
  await openSample(page);
  const grip = page.locator(".sheet-grip");
  const heightOf = async () => (await page.locator(".steps").boundingBox())?.height ?? 0;
  const half = await heightOf();
  const from = await middle(grip);
  const touch = await page.context().newCDPSession(page);
  const drag = async (to_y: number) => {
    const start = await middle(grip);
    const point = (y: number) => ({ touchPoints: [{ x: start.x, y }] });
    await touch.send("Input.dispatchTouchEvent", { type: "touchStart", ...point(start.y) });
    for (let step = 1; step <= 8; step++) {
      await touch.send("Input.dispatchTouchEvent", {
        type: "touchMove",
        ...point(start.y + ((to_y - start.y) * step) / 8),
      });
      await page.waitForTimeout(20);
    }
    const held = await heightOf();
    await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    return held;
  };
  expect(await drag(from.y + 120)).toBeLessThan(half - 80);
  await expect.poll(heightOf).toBeCloseTo(half, 0);
  await drag(800);
  await expect(grip).toHaveText("Pull up the steps");
  await expect.poll(heightOf).toBeLessThan(half * 0.5);
  await expectAccessible(page);
  await picture(page, "phone-steps-low");
  await drag(150);
  await expect(grip).toHaveText("More map");
  await expectAccessible(page);
  // The same by keys.
  await grip.focus();
  await page.keyboard.press("ArrowDown");
  await expect(grip).toHaveText("More room for the steps");
  await page.keyboard.press("ArrowDown");
  await expect(grip).toHaveText("Pull up the steps");
});

test("on a phone a tapped number tells how it came about within the screen", async ({ page }) => {
  await openSample(page);
  await page.getByRole("region", { name: "Rows", exact: true }).locator(".stage-result .figure").first().tap();
  const account = page.getByRole("tooltip");
  await expect(account).toBeInViewport({ ratio: 1 });
  await expectAccessible(page);
  await picture(page, "phone-figure");
  await page.getByRole("heading", { level: 1 }).tap({ position: { x: 5, y: 5 } });
  await expect(account).toHaveCount(0);
});
