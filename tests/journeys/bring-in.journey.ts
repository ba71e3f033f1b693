import type { Page } from "@playwright/test";
import { createDrawing, type Place } from "../support/drawing-text.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { openSample, openStage, result, rowButtons } from "./steps.ts";

/* Invented ground, beside that of the sample "acre-with-notch". */
const corner: Place = [-121.1842, 39.151];
const near = (east: number, north: number): Place => [corner[0] + east * 1.158e-5, corner[1] + north * 9.006e-6];
const ring = (east: number, north: number, side: number): readonly Place[] => [
  near(east, north),
  near(east + side, north),
  near(east + side, north + side),
  near(east, north + side),
];
const survey = createDrawing([
  ["TREES", [near(12, 20)]],
  ["TREES", [near(30, 41)]],
  ["POND", ring(20, 8, 9)],
  ["WELL", [near(-4, 6)]],
  ["SHEET", ring(-10, -10, 90)],
]);
const lot = createDrawing([
  ["LOT", ring(0, 0, 85)],
  ["OAK", [near(40, 40)]],
]);

async function drop(page: Page, name: string, content: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([fileName = "", text = ""]) => {
      const made = new DataTransfer();
      made.items.add(new File([text], fileName));
      return made;
    },
    [name, content],
  );
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

async function choose(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Bring in a file" }).click();
  await (await chooser).setFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(text) });
}

function dialog(page: Page) {
  return page.getByRole("dialog", { name: /^Bring in|Nothing was taken in|in the project now$/ });
}

async function answerDegrees(page: Page): Promise<void> {
  await dialog(page)
    .getByRole("radio", { name: /^Longitude and latitude/ })
    .check();
  await dialog(page).getByRole("button", { name: "Read it so" }).click();
  await expect(dialog(page).getByRole("button", { name: /^(?:Take in|Begin a project)/ })).toBeVisible();
}

test("a surveyor's drawing is brought in: what it leaves open is asked, each thing gets its role, and undo takes all of it back", async ({
  page,
}) => {
  await openSample(page);
  await openStage(page, "Ground");
  const before = await result(page, "Rows");
  await choose(page, "survey.dxf", survey);
  await expect(dialog(page)).toContainText("does not say which coordinate system its numbers are in");
  await expect(dialog(page).getByRole("button", { name: "Read it so" })).toBeDisabled();
  await expectAccessible(page);
  await picture(page, "bring-in-question");
  await answerDegrees(page);

  const tree = dialog(page).getByRole("combobox", { name: "All 2 points of TREES" });
  await expect(tree).toHaveValue("obstacle");
  await expect(dialog(page).getByRole("combobox", { name: "POND is" })).toHaveValue("obstacle");
  await expect(dialog(page).getByRole("combobox", { name: "WELL is" })).toHaveValue("source");
  await expect(dialog(page).getByRole("combobox", { name: "SHEET is" })).toHaveValue("");
  await expect(dialog(page)).toContainText("4 of 5 things will be taken in.");
  await tree.selectOption("mark");
  await dialog(page).getByText("TREES", { exact: true }).last().hover();
  await expectAccessible(page);
  await picture(page, "bring-in-preview");
  expect(await result(page, "Rows")).toBe(before);

  await dialog(page).getByRole("button", { name: "Take in", exact: true }).click();
  await expect(dialog(page)).toBeHidden();
  await expect(page.getByText("4 things from survey.dxf are in the project now.")).toBeVisible();
  const drawn = page.locator(".drawn-list");
  await expect(drawn).toContainText("Obstacle");
  await expect.poll(() => result(page, "Rows")).not.toBe(before);
  await picture(page, "bring-in-taken");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(() => result(page, "Rows")).toBe(before);
});

test("a drawing dropped on the first screen begins a project", async ({ page }) => {
  await page.goto("/");
  await drop(page, "north field.dxf", lot);
  await answerDegrees(page);
  await expect(dialog(page).getByRole("combobox", { name: "LOT is" })).toHaveValue("parcel");
  await dialog(page).getByRole("radio", { name: "US" }).check();
  await picture(page, "bring-in-new");
  await dialog(page).getByRole("button", { name: "Begin a project with it" }).click();
  await expect(rowButtons(page).first()).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("north field");
  await expect.poll(() => result(page, "Ground")).toContain("ac");
});

test("a file that cannot be read is refused in words, and Escape leaves everything as it was", async ({ page }) => {
  await openSample(page);
  const before = await result(page, "Rows");
  await drop(page, "letter.pdf", "Dear neighbour, the fence is down again.");
  await expect(dialog(page)).toContainText("letter.pdf was not taken in; what is open is as it was.");
  await expect(dialog(page)).toContainText("is in no format that is read here");
  await expectAccessible(page);
  await picture(page, "bring-in-refused");
  await page.keyboard.press("Escape");
  await expect(dialog(page)).toHaveCount(0);
  expect(await result(page, "Rows")).toBe(before);
});

test("pasted corners are read while they are typed, shown, and begin a project", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Paste corners" }).click();
  const text = dialog(page).getByRole("textbox", { name: /^One corner a line/ });
  await text.fill("39.15100, -121.18420\n39.15100, -121.18340\n39.15180, -121.18340\nthe old oak 12");
  await expect(dialog(page)).toContainText("Read as");
  await expect(dialog(page).getByRole("status").filter({ hasText: "oak" })).toBeVisible();
  await expectAccessible(page);
  await picture(page, "paste-corners");
  await text.fill("39.15100, -121.18420\n39.15100, -121.18340\n39.15180, -121.18340\n39.15180, -121.18420");
  await expect(dialog(page).getByRole("combobox")).toHaveValue("parcel");
  await dialog(page).getByRole("button", { name: "Begin a project with it" }).click();
  await expect(rowButtons(page).first()).toBeVisible();
});

test("a boundary told by bearings and distances asks where it begins, and says by how much it misses its beginning", async ({
  page,
}) => {
  await openSample(page);
  await openStage(page, "Ground");
  await page.getByRole("button", { name: "Paste corners" }).click();
  await dialog(page)
    .getByRole("textbox", { name: /^One corner a line/ })
    .fill("N 90 E 120.00 m\nN 0 E 60.00 m\nN 90 W 120.00 m\nS 0 E 59.90 m");
  await expect(dialog(page)).toContainText("The end misses the beginning by");
  await dialog(page)
    .getByRole("textbox", { name: /^First corner/ })
    .fill("39.15100, -121.18420");
  const north = dialog(page).getByRole("radio", { name: /true/i });
  if (await north.isVisible()) {
    await north.check();
    await dialog(page).getByRole("button", { name: "Read it so" }).click();
  }
  await expect(dialog(page).getByRole("combobox")).toBeVisible();
  await picture(page, "paste-boundary");
  await dialog(page).getByRole("combobox").selectOption("obstacle");
  await dialog(page).getByRole("button", { name: "Take in", exact: true }).click();
  await expect(dialog(page)).toHaveCount(0);
  await expect(page.locator(".drawn-list")).toContainText("Obstacle 1");
});

test("things far from the parcels are told before they are taken", async ({ page }) => {
  await openSample(page);
  await drop(page, "elsewhere.dxf", createDrawing([["TREES", [[-120, 38]]]]));
  await answerDegrees(page);
  await expect(dialog(page).getByRole("alert")).toContainText("Is the coordinate system right?");
  await dialog(page).getByRole("button", { name: "Take in", exact: true }).click();
  await expect(page.getByRole("heading", { name: "Nothing was taken in" })).toBeVisible();
  await expect(dialog(page)).toContainText("left out");
  await picture(page, "bring-in-far");
  await dialog(page).getByRole("button", { name: "Done" }).click();
  await expect(dialog(page)).toHaveCount(0);
});

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

  test("a drawing is brought in by thumb, and nothing is wider than the screen", async ({ page }) => {
    await openSample(page);
    await drop(page, "survey.dxf", survey);
    await dialog(page)
      .getByRole("radio", { name: /^Longitude and latitude/ })
      .tap();
    await picture(page, "phone-bring-in-question");
    await dialog(page).getByRole("button", { name: "Read it so" }).tap();
    await expect(dialog(page).getByRole("button", { name: "Take in", exact: true })).toBeVisible();
    await expectAccessible(page);
    await picture(page, "phone-bring-in-preview");
    const overflow = await dialog(page).evaluate((box) => box.scrollWidth - box.clientWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await dialog(page).getByRole("button", { name: "Take in", exact: true }).tap();
    await expect(dialog(page)).toHaveCount(0);
  });
});
