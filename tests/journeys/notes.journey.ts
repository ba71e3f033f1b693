import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { pixelsLike } from "./steps.ts";

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
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open your own file" }).click();
  await (await chooser).setFiles({
    name: "bow-tie.geojson",
    mimeType: "application/geo+json",
    buffer: Buffer.from(bowTie),
  });
  const error = page.locator(".note-error").first();
  await expect(error).toContainText("Error:");
  await expect(error.locator("p")).toHaveCount(3);
  const show = error.getByRole("button", { name: "Show the place" });
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
