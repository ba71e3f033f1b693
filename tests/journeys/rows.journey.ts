import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { bearingOf, chart, handle, middle, openSample, openStage, pixelsLike, result, rowButtons } from "./steps.ts";

const halo = [242, 193, 78] as const;
const ink = [34, 40, 31] as const;

test("the rows turn live while the handle is dragged, and stay when it is let go", async ({ page }) => {
  await openSample(page);
  await expect(page.getByText("Turn to the best")).toBeVisible();
  const knob = handle(page);
  const before = await bearingOf(knob);
  const rowsBefore = await result(page, "Rows");
  const from = await middle(knob);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const seen = new Set<number>();
  const results = new Set<string>();
  for (let step = 1; step <= 24; step++) {
    await page.mouse.move(from.x + step * 14, from.y + step * 7);
    await page.waitForTimeout(25);
    seen.add(await bearingOf(knob));
    results.add(await result(page, "Rows"));
  }
  expect(seen.size).toBeGreaterThan(10);
  // Lists and totals follow at their own pace.
  expect(results.size).toBeGreaterThan(2);
  // In mid drag the rows are on the map: much ink where the parcel is.
  const map = await page.locator(".map").boundingBox();
  if (!map) throw new Error("there is no map");
  const heart = { x: map.x + map.width * 0.25, y: map.y + map.height * 0.35, width: 260, height: 220 };
  expect(await pixelsLike(page, heart, ink)).toBeGreaterThan(1500);
  await picture(page, "dragging");
  await page.mouse.up();
  const after = await bearingOf(knob);
  expect(Math.abs(after - before)).toBeGreaterThan(20);
  expect(await result(page, "Rows")).not.toBe(rowsBefore);
  await expect(page.getByLabel("Bearing", { exact: true })).toHaveValue(
    new RegExp(`^${String(after).replace(".", "\\.")}°$`),
  );
  // Afterwards the map's own layers show the same rows.
  await page.waitForTimeout(1200);
  expect(await pixelsLike(page, heart, ink)).toBeGreaterThan(1500);
  await picture(page, "dragged");
});

test("arrow keys turn the handle by a degree, with Shift by a tenth", async ({ page }) => {
  await openSample(page);
  const knob = handle(page);
  const before = await bearingOf(knob);
  await knob.focus();
  await page.keyboard.press("ArrowRight");
  await expect(knob).toHaveAttribute("aria-valuenow", String(before + 1));
  await page.keyboard.press("Shift+ArrowLeft");
  await expect(knob).toHaveAttribute("aria-valuenow", String(Math.round((before + 0.9) * 10) / 10));
});

test("a typed bearing and typed spacings are planned at once", async ({ page }) => {
  await openSample(page);
  await page.getByLabel("Bearing", { exact: true }).fill("24 deg");
  await expect(handle(page)).toHaveAttribute("aria-valuenow", "24");
  const wide = await result(page, "Rows");
  await page.getByLabel("Row spacing", { exact: true }).fill("2 m");
  await expect.poll(() => result(page, "Rows")).not.toBe(wide);
  const narrow = await result(page, "Rows");
  expect(Number.parseInt(narrow, 10)).toBeGreaterThan(Number.parseInt(wide, 10));
  // A number alone is in the unit that the field shows: feet, in this sample.
  await page.getByLabel("Row spacing", { exact: true }).fill("12");
  await page.getByLabel("Row spacing", { exact: true }).press("Enter");
  await expect(page.getByLabel("Row spacing", { exact: true })).toHaveValue("12 ft");
  expect(Number.parseInt(await result(page, "Rows"), 10)).toBeLessThan(Number.parseInt(wide, 10));
});

test("a quantity that makes no sense gets a sentence beside the field and changes nothing", async ({ page }) => {
  await openSample(page);
  const before = await result(page, "Rows");
  const field = page.getByLabel("Row spacing", { exact: true });
  for (const wrong of ["eight", "8 furlongs", "-8 ft", "0"]) {
    await field.fill(wrong);
    await field.blur();
    await expect(field).toHaveAttribute("aria-invalid", "true");
    await expect(page.locator(".field-refusal")).not.toBeEmpty();
    await expect(field).toHaveValue(wrong);
    expect(await result(page, "Rows")).toBe(before);
  }
  await expectAccessible(page);
  await picture(page, "wrong-quantity");
  await field.press("Escape");
  await expect(field).toHaveValue("8 ft");
  await expect(page.locator(".field-refusal")).toHaveCount(0);
});

test("setback and headland shorten the rows; whole bays shorten them again", async ({ page }) => {
  await openSample(page);
  const length = async () =>
    Number((await result(page, "Rows")).replace(/^.*?, ([\d,]+) ft, .*$/, "$1").replace(/,/g, ""));
  const start = await length();
  await page.getByLabel("Headland", { exact: true }).fill("40 ft");
  await expect.poll(length).toBeLessThan(start);
  const withHeadland = await length();
  await openStage(page, "Ground");
  await page.getByLabel("Setback from edges", { exact: true }).fill("60 ft");
  await expect.poll(length).toBeLessThan(withHeadland);
  const withSetback = await length();
  await page.getByLabel("Rows end", { exact: true }).selectOption("bays");
  await expect.poll(length).toBeLessThan(withSetback);
});

test("a row chosen in the list has its halo on the map, and one clicked on the map is marked in the list", async ({
  page,
}) => {
  await openSample(page);
  // The chart above the list comes a moment later and moves it down.
  await expect(page.getByText("Turn to the best")).toBeVisible();
  const map = await page.locator(".map").boundingBox();
  if (!map) throw new Error("there is no map");
  const heart = { x: map.x + 100, y: map.y + 100, width: map.width - 200, height: map.height - 150 };
  await page.waitForTimeout(800);
  expect(await pixelsLike(page, heart, halo)).toBe(0);
  await rowButtons(page).nth(4).click();
  await expect.poll(() => pixelsLike(page, heart, halo)).toBeGreaterThan(300);
  await picture(page, "row-from-list");

  await page.mouse.click(map.x + map.width * 0.45, map.y + map.height * 0.5);
  const pressed = page.locator('.row-list button[aria-pressed="true"]');
  await expect(pressed).toHaveCount(1);
  await expect(pressed).not.toHaveText("5");
  await expect(pressed).toBeInViewport();
  await picture(page, "row-from-map");
});

test("the row list is walked by keys, and only the lines in view are in the page", async ({ page }) => {
  await openSample(page, "brook-and-two-blocks");
  const rows = Number.parseInt(await result(page, "Rows"), 10);
  expect(await rowButtons(page).count()).toBeLessThan(Math.min(rows, 30));
  await rowButtons(page).first().focus();
  await page.keyboard.press("Control+End");
  const pressed = page.locator('.row-list button[aria-pressed="true"]');
  await expect(page.locator(".row-list tr.is-selected")).toHaveAttribute("aria-rowindex", String(rows + 1));
  await expect(page.locator(".row-list .is-selected td:last-child button")).toBeFocused();
  await page.keyboard.press("Home");
  await expect(pressed).toBeFocused();
  await page.keyboard.press("ArrowUp");
  await expect(page.locator(".row-list tr.is-selected")).toHaveAttribute("aria-rowindex", String(rows));
  await page.keyboard.press("Control+Home");
  await expect(page.locator(".row-list tr.is-selected")).toHaveAttribute("aria-rowindex", "2");
  await expect(pressed).toBeFocused();
});

test("a click on the chart turns the rows, and so do its keys and the button for the best", async ({ page }) => {
  await openSample(page);
  const best = page.getByRole("button", { name: /^Turn to the best/ });
  await expect(best).toBeVisible();
  await chart(page).scrollIntoViewIfNeeded();
  const box = await chart(page).boundingBox();
  if (!box) throw new Error("there is no chart");
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  expect(Math.abs((await bearingOf(handle(page))) - 90)).toBeLessThan(2);
  const clicked = await bearingOf(chart(page));
  await chart(page).focus();
  await page.keyboard.press("ArrowRight");
  await expect(chart(page)).toHaveAttribute("aria-valuenow", String(clicked + 1));
  await picture(page, "chart");
  await best.click();
  const named = Number.parseFloat(((await best.textContent()) ?? "").replace(/^.*, /, ""));
  await expect(handle(page)).toHaveAttribute("aria-valuenow", String(named));
});

test("the units switch shows the same plan in the other units", async ({ page }) => {
  await openSample(page);
  const rows = Number.parseInt(await result(page, "Rows"), 10);
  await page.getByRole("radio", { name: "Metric" }).check();
  expect(await result(page, "Rows")).toMatch(new RegExp(`^${rows} rows, [\\d,]+ m, [\\d.]+ ha$`));
  await expect(page.getByLabel("Row spacing", { exact: true })).toHaveValue("2.44 m");
});

test("with two blocks the handle and the fields are those of the chosen block", async ({ page }) => {
  await openSample(page, "brook-and-two-blocks");
  const [first, second] = [page.locator(".block-choice input").nth(0), page.locator(".block-choice input").nth(1)];
  await expect(first).toBeChecked();
  const firstBearing = await page.getByLabel("Bearing", { exact: true }).inputValue();
  await second.check();
  await expect(page.getByLabel("Bearing", { exact: true })).not.toHaveValue(firstBearing);
  const before = await bearingOf(handle(page));
  await handle(page).focus();
  await page.keyboard.press("ArrowRight");
  await expect(handle(page)).toHaveAttribute("aria-valuenow", String(before + 1));
  await first.check();
  await expect(page.getByLabel("Bearing", { exact: true })).toHaveValue(firstBearing);
});
