import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, result } from "./steps.ts";

test("the trench step tells what is dug, and its caution is always in view", async ({ page }) => {
  await openSample(page);
  await openStage(page, "Trench");
  await expect.poll(() => result(page, "Trench")).toMatch(/(m|ft), .* to dig/);
  const stage = page.getByRole("region", { name: "Trench", exact: true });
  await expect(stage.getByText("A trench that falls in can kill at any depth.")).toBeVisible();
  await stage.getByText("Pipe of the main line").scrollIntoViewIfNeeded();
  await picture(page, "trench-step");
  await stage.getByText("Low points").first().scrollIntoViewIfNeeded();
  await picture(page, "trench-results");
  await expectAccessible(page);
});
