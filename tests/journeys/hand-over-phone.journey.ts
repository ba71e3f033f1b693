import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { chooseFormat, saveFiles, tickOnly, unpacked } from "./hand-over-steps.ts";
import { openSample, openStage } from "./steps.ts";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

test("on a phone the posts leave as the points that a survey controller takes", async ({ page }) => {
  test.setTimeout(90_000);
  await openSample(page);
  await page.locator(".sheet-grip").tap();
  await openStage(page, "Hand over");
  await chooseFormat(page, "Survey list");
  await tickOnly(page, "Posts");
  await page.getByLabel("Order of numbers").selectOption({ label: "easting, northing" });
  await expect(page.getByText("point, easting, northing, height, code")).toBeVisible();
  await expect(page.getByRole("button", { name: "Save 2 files" })).toBeEnabled();
  await page.getByText("What goes out").scrollIntoViewIfNeeded();
  await picture(page, "phone-hand-over");
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);
  const { bytes } = await saveFiles(page, "Save 2 files");
  await picture(page, "phone-hand-over-saved");
  const texts = unpacked(bytes);
  const [first = ""] = (Object.entries(texts).find(([name]) => name.endsWith(".csv"))?.[1] ?? "").split("\r\n");
  expect(first).toMatch(/^R1E01,656\d{3}\.\d+,4335\d{3}\.\d+,/);
  await expectAccessible(page);
});
