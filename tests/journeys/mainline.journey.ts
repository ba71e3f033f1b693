import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, result } from "./steps.ts";

test("the main line is laid beside the page and drawn under the rows", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Main line");
  await expect.poll(() => result(page, "Main line")).toMatch(/m, \d+ row tees|ft, \d+ row tees/);
  await picture(page, "mainline-step");
  await expectAccessible(page);
});
