import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openOwnFile, openSample, pixelsLike } from "./steps.ts";

const amber = [176, 122, 0] as const;

const bowTie = JSON.stringify({
  type: "Polygon",
  coordinates: [
    [
      [-76.9, 42.6],
      [-76.8985, 42.6012],
      [-76.8985, 42.6],
      [-76.9, 42.6012],
      [-76.9, 42.6],
    ],
  ],
});

test("a note tells what is wrong, why and what to do, and a click shows its place", async ({ page }) => {
  await page.goto("/");
  await openOwnFile(page, "bow-tie.geojson", bowTie);
  const error = page.locator(".note-error").first();
  await expect(error).toContainText("Error:");
  await expect(error.locator("p")).toHaveCount(3);
  const show = error.getByRole("button", { name: /^Show the place/ });
  await show.click();
  await expect(show).toHaveAttribute("aria-pressed", "true");
  const map = await page.locator(".map").boundingBox();
  if (!map) throw new Error("there is no map");
  const centre = { x: map.x + map.width / 2 - 40, y: map.y + map.height / 2 - 40, width: 80, height: 80 };
  // The place is ringed in the middle of the map once the flight is over.
  await expect.poll(() => pixelsLike(page, centre, amber)).toBeGreaterThan(150);
  await expectAccessible(page);
  await picture(page, "note-place");
});

test("the count in the top bar opens the list, and the step that a warning is of is marked with sign and words", async ({
  page,
}) => {
  await openSample(page, "brook-and-two-blocks");
  const button = page.locator(".notes-button");
  await expect(button).toHaveAttribute("aria-expanded", "false");
  await expect(button).toHaveAccessibleName(/\d (warnings|notes)$/);
  await button.click();
  const list = page.getByRole("region", { name: /^Notes and warnings/ });
  await expect(list).toBeFocused();
  for (const note of await list.locator(".note").all()) await expect(note.locator("p")).toHaveCount(3);
  const grave = await list.locator(".note-warning, .note-error").count();
  const marks = await page.locator(".stage-mark").allTextContents();
  expect(marks.map((text) => Number(/\d+/.exec(text)?.[0])).reduce((sum, each) => sum + each, 0)).toBe(grave);
  await expectAccessible(page);
  await picture(page, "notes-list");
  await page.keyboard.press("Escape");
  await expect(list).toHaveCount(0);
  await expect(button).toBeFocused();
});

test("an outline walked with a phone marks its step with a warning, in words too", async ({ page }) => {
  await page.goto("/");
  const walked = JSON.parse(bowTie.replace("[-76.8985,42.6012],[-76.8985,42.6]", "[-76.8985,42.6],[-76.8985,42.6012]"));
  const text = JSON.stringify({ type: "Feature", properties: { role: "parcel", outline: "walked" }, geometry: walked });
  await openOwnFile(page, "walked.geojson", text);
  const mark = page.getByRole("region", { name: "Ground", exact: true }).locator(".stage-mark");
  await expect(mark).toHaveText(/△ 1 \(1 warning\)/);
  await expect(page.locator(".notes-button")).toHaveAccessibleName(/1 warnings?$/);
});
