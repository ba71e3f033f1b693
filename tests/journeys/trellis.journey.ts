import type { Locator, Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, rowButtons } from "./steps.ts";

/** A part of the trellis step: ends of rows, posts and stakes, loads. */
async function openPart(page: Page, name: string): Promise<Locator> {
  const part = page.locator(".stage-part").filter({ has: page.locator("summary strong", { hasText: name }) });
  await part.locator("summary").click();
  await expect(part).toHaveAttribute("open", "");
  return part;
}

async function openTrellis(page: Page): Promise<void> {
  await openSample(page);
  await rowButtons(page).nth(4).click();
  await openStage(page, "Trellis");
}

async function openSide(page: Page): Promise<Locator> {
  await page.getByRole("button", { name: /^Side view/ }).click();
  const drawing = page.getByRole("img", { name: /^Row 5 from its side/ });
  await expect(drawing).toBeVisible();
  return drawing;
}

/** Metres or feet of wire in the one line that the step says of itself. */
async function wireInAll(page: Page): Promise<number> {
  const line = page.getByRole("region", { name: "Trellis", exact: true }).locator(".stage-result");
  await expect(line).toContainText("of wire");
  const found = /([\d,.]+) (ft|m|mi|km) of wire/.exec((await line.textContent()) ?? "");
  return Number(found?.[1]?.replaceAll(",", ""));
}

test("leaning end posts lengthen the wire, and the drawing leans at once; the caution stays in view", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openTrellis(page);
  const drawing = await openSide(page);
  const before = await wireInAll(page);
  expect(before).toBeGreaterThan(1000);
  const upright = await drawing.locator(".post-end").first().getAttribute("d");
  const ends = await openPart(page, "Ends of rows");
  await ends.getByLabel("Rows end in").selectOption("leaning");
  await expect(drawing.locator(".post-end").first()).not.toHaveAttribute("d", upright ?? "");
  await expect.poll(() => wireInAll(page)).toBeGreaterThan(before);
  await ends.getByLabel("Anchor from the end post").fill("9 ft");
  await ends.getByLabel("Anchor from the end post").press("Enter");
  await expect(ends.locator(".figures")).toContainText("Tie-back");
  await expect(page.getByText("Wire under tension can whip", { exact: false }).first()).toBeVisible();
  await expectAccessible(page);
  await picture(page, "trellis-leaning-us");
  await page.getByRole("button", { name: "1:50" }).click();
  await picture(page, "trellis-leaning-close-us");

  await page.getByRole("radio", { name: "Metric" }).check();
  await expect(page.locator(".side-heights")).toContainText("drip 0.457 m");
  await picture(page, "trellis-leaning-metric");
});

test("an H-brace is drawn with its second post, and asks for what it has only", async ({ page }) => {
  test.setTimeout(120_000);
  await openTrellis(page);
  const drawing = await openSide(page);
  await expect(drawing.locator('[data-part="anchor"]')).toHaveCount(2);
  const ends = await openPart(page, "Ends of rows");
  await ends.getByLabel("Rows end in").selectOption("h-brace");
  await expect(drawing.locator(".post-brace")).toHaveCount(2);
  await expect(drawing.locator('[data-part="anchor"]')).toHaveCount(0);
  await expect(ends.getByLabel("Anchor from the end post")).toHaveCount(0);
  const reach = ends.getByLabel("Brace reaches into the row");
  await expect(reach).toHaveValue("");
  await expect(ends).toContainText("twice its height");
  await page.getByRole("button", { name: "1:50" }).click();
  await reach.fill("8 ft");
  await expect(drawing.locator('[data-dimension="brace"]').first()).toContainText("8 ft");
  await expectAccessible(page);
  await picture(page, "trellis-h-brace-us");
  await page.getByRole("radio", { name: "Metric" }).check();
  await expect(page.locator(".side-heights")).toContainText("drip 0.457 m");
  await picture(page, "trellis-h-brace-metric");
  // What is left empty again takes what is usual.
  await reach.fill("");
  await reach.press("Enter");
  await expect(ends).toContainText("twice its height");
});

test("a wire's steel, pull and ends are set in its own lines, and its loads follow", async ({ page }) => {
  test.setTimeout(120_000);
  await openTrellis(page);
  const loads = await openPart(page, "Loads");
  const wire = loads.getByRole("region", { name: "Loads of wire 2" });
  await expect(wire).toContainText("Check without a gauge");
  const share = wire.locator("div").filter({ hasText: "Share of breaking" }).locator("dd");
  const before = await share.textContent();
  const line = page.locator(".wire-more").nth(1);
  await line.locator("summary").click();
  await expect(line.locator("summary")).toContainText("75 lbf, wire gripper to wrapped loop");
  await line.getByLabel("Wire 2 tension").fill("120");
  await line.getByLabel("Wire 2 tension").press("Enter");
  await expect(line.locator("summary")).toContainText("120 lbf");
  await expect(share).not.toHaveText(before ?? "");
  await line.getByLabel("Wire 2 steel").selectOption("grade-200");
  await line.getByLabel("Wire 2 at the end").selectOption("gripper");
  await expect(line.locator("summary")).toContainText("wire gripper to wire gripper");
  // The other wires stay as they were.
  await expect(page.locator(".wire-more").nth(2).locator("summary")).toContainText(
    "75 lbf, wire gripper to wrapped loop",
  );
  await loads.getByLabel("Fruit on a vine at harvest").fill("12 lb");
  await expect(wire).toContainText("Sag at harvest");
  await expectAccessible(page);
  await picture(page, "trellis-wire-and-loads-us");
  await page.getByRole("button", { name: /^Undo: fruit on a vine/i }).click();
  await expect(wire).not.toContainText("Sag at harvest");
});

test("notches move wires to the next one, in the plan and in the drawing", async ({ page }) => {
  test.setTimeout(90_000);
  await openTrellis(page);
  await openSide(page);
  const posts = await openPart(page, "Posts and stakes");
  await posts.getByLabel("Line post holds wire by").selectOption("notch");
  await posts.getByLabel("Line post, from notch to notch").fill("5 in");
  await expect(page.locator(".side-heights")).toContainText("drip 1.42 ft");
  await posts.getByLabel("Frost goes down to").fill("4 ft");
  await expect(page.locator('[data-dimension="embedment"] text').first()).toHaveText("4.17 ft");
  await expectAccessible(page);
  await picture(page, "trellis-posts-us");
});

test("on a phone the trellis step keeps within the page", async ({ page }) => {
  test.setTimeout(90_000);
  await page.setViewportSize({ width: 390, height: 844 });
  await openSample(page);
  await openStage(page, "Trellis");
  await openPart(page, "Ends of rows");
  await openPart(page, "Loads");
  await page.locator(".wire-more summary").first().click();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBe(0);
  await expectAccessible(page);
  await page.locator(".wires").scrollIntoViewIfNeeded();
  await picture(page, "trellis-phone-wires");
  await page.locator(".stage-part").first().scrollIntoViewIfNeeded();
  await picture(page, "trellis-phone-ends");
});
