import { readFileSync } from "node:fs";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openOwnFile, openSample, result, rowButtons } from "./steps.ts";

const sampleText = readFileSync(new URL("../../samples/crooked-strip/project.geojson", import.meta.url), "utf8");
const bare = JSON.stringify({
  type: "Polygon",
  coordinates: [
    [
      [-76.9, 42.6],
      [-76.8985, 42.6],
      [-76.8985, 42.6012],
      [-76.9, 42.6012],
      [-76.9, 42.6],
    ],
  ],
});

/** Lets go of a file over the page, as from a folder window. */
async function drop(page: import("@playwright/test").Page, name: string, content: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([fileName = "", text = ""]) => {
      const made = new DataTransfer();
      made.items.add(new File([text], fileName, { type: "application/geo+json" }));
      return made;
    },
    [name, content],
  );
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await expect(page.getByText("Drop the file to open it")).toBeVisible();
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

test("the first screen offers a file of one's own and every sample, and axe finds nothing wrong with it", async ({
  page,
}) => {
  await page.goto("/");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Tautrow");
  await expect(page.getByRole("button", { name: "Open your own file" })).toBeVisible();
  await expect(page.locator(".sample-list button")).toHaveCount(3);
  await expectAccessible(page);
  await picture(page, "first-screen");
});

test("a sample opens with its rows listed and counted, and axe finds nothing wrong", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("button", { name: /Acre with a notch/ }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch");
  await expect(rowButtons(page).first()).toHaveText("1");
  expect(await result(page, "Rows")).toMatch(/^\d+ rows, [\d,]+ ft, [\d.]+ acres$/);
  // The chart is computed a moment later; axe is to see it.
  await expect(page.getByText("Turn to the best")).toBeVisible();
  await expectAccessible(page);
  await picture(page, "sample");
});

test("every sample opens from its address, draws its plan and says so in its title", async ({ page }) => {
  for (const name of ["acre-with-notch", "brook-and-two-blocks", "crooked-strip"]) {
    await openSample(page, name);
    await expect(page.getByText("Turn to the best")).toBeVisible();
    await picture(page, `sample-${name}`);
  }
});

test("a file chosen by button replaces what was open", async ({ page }) => {
  // A headless browser shows no file window of its own; the page has a field for browsers that have none.
  await page.addInitScript(() => Object.defineProperty(window, "showOpenFilePicker", { value: undefined }));
  await openSample(page);
  await page.getByRole("button", { name: "Open…" }).click();
  await openOwnFile(page, "strip.geojson", sampleText);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Crooked strip");
  await expect(page.getByRole("dialog")).toBeHidden();
});

test("a bare polygon that is dropped on the first screen is planned with defaults, and a note says so", async ({
  page,
}) => {
  await page.goto("/");
  await drop(page, "field.geojson", bare);
  await expect(rowButtons(page).first()).toBeVisible();
  await page.getByRole("button", { name: /\d notes$/ }).click();
  await expect(page.locator(".note").filter({ hasText: "Row spacing 2.4 m" }).first()).toBeVisible();
  await picture(page, "bare-polygon");
});

test("a file that is no project is refused with a reason, and what was open stays as it was", async ({ page }) => {
  await openSample(page);
  const before = await result(page, "Rows");
  await drop(page, "letter.geojson", "Dear neighbour, the fence is down again.");
  const refusal = page.getByRole("alert");
  await expect(refusal).toContainText("letter.geojson was not opened.");
  await expect(refusal).toContainText("What was open stays open.");
  await picture(page, "refused");
  expect(await result(page, "Rows")).toBe(before);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Acre with a notch");
  await refusal.getByRole("button", { name: "Close" }).click();
  await expect(refusal).toBeHidden();
});

test("a name with markup in it is shown as text", async ({ page }) => {
  const hostile = sampleText.replace(/"name": "Crooked strip"/, '"name": "<img src=x onerror=alert(1)>"');
  expect(hostile).not.toBe(sampleText);
  await page.goto("/");
  await drop(page, "hostile.geojson", hostile);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("<img src=x onerror=alert(1)>");
  await expect(page.locator("img")).toHaveCount(0);
});

test("an address on another server is refused without being asked", async ({ page }) => {
  await page.goto("/?open=https://example.com/parcel.geojson");
  await expect(page.getByRole("alert")).toContainText("not on this page's own server");
});

test("an empty map is a beginning: Ground is open and asks for the parcel, the other steps wait, nothing is an error", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("radio", { name: "Metric" }).check();
  await page.getByRole("button", { name: "Start with an empty map" }).click();
  const ground = page.getByRole("region", { name: "Ground", exact: true });
  await expect(ground.getByText("Draw the parcel to begin")).toBeVisible();
  for (const name of ["Rows", "Main line", "Trellis", "Drip", "Materials", "Hand over"]) {
    expect(await result(page, name)).toBe("after the parcel is drawn");
  }
  await expect(page.locator(".stage-mark, .note-error")).toHaveCount(0);
  await expectAccessible(page);
  await picture(page, "empty-map");
  // What is known before the ground can be set before it.
  await page.getByRole("button", { name: "Rows", exact: true }).click();
  await page.getByLabel("Row spacing", { exact: true }).fill("3 m");
  await page.getByLabel("Row spacing", { exact: true }).press("Enter");
  await expect(page.getByRole("button", { name: "Undo: row spacing 3 m" })).toBeVisible();
  await expectAccessible(page);
});
