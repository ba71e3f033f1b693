import type { Page } from "@playwright/test";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { expectKept, expectOpen, openMenu, rowSpacing, spaceRows } from "./keeping-steps.ts";
import { openSample } from "./steps.ts";

/**
 * A headless browser shows no file windows: these give back a file of the page's private folder, which is read and written through the
 * same kind of handle.
 */
async function withFileWindows(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const file = async (name: string, create: boolean): Promise<FileSystemFileHandle> =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create });
    Object.defineProperty(window, "showSaveFilePicker", {
      value: ({ suggestedName }: { suggestedName: string }) =>
        file(sessionStorage.getItem("next") ?? suggestedName, true),
    });
    Object.defineProperty(window, "showOpenFilePicker", { value: async () => [await file("own.geojson", false)] });
  });
}

function fileText(page: Page, name: string): Promise<string> {
  return page.evaluate(
    async (wanted) => (await (await (await navigator.storage.getDirectory()).getFileHandle(wanted)).getFile()).text(),
    name,
  );
}

function writeFile(page: Page, name: string, text: string): Promise<void> {
  return page.evaluate(
    async ([wanted = "", content = ""]) => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle(wanted, { create: true });
      const stream = await handle.createWritable();
      await stream.write(content);
      await stream.close();
    },
    [name, text],
  );
}

const save = (page: Page) => page.locator(".save-button").click();
const told = (page: Page, sentence: string) => page.getByRole("status").filter({ hasText: sentence });

/** The first sample, changed, kept, and saved in a file. */
async function saveSample(page: Page): Promise<void> {
  await withFileWindows(page);
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  await save(page);
  await expect(told(page, "Saved in")).toBeVisible();
}

test("a project is saved in a file, then in the same file again without being asked, also after a reload", async ({
  page,
}) => {
  await withFileWindows(page);
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  await save(page);
  await expect(told(page, "Saved in “acre-with-a-notch.geojson”.")).toBeVisible();
  expect(await fileText(page, "acre-with-a-notch.geojson")).toContain('"9 ft"');
  await expectAccessible(page);
  await picture(page, "saved-in-file");
  await page.reload();
  await expectOpen(page, "Acre with a notch");
  await spaceRows(page, "10 ft");
  await page.getByRole("button", { name: "Save in acre-with-a-notch.geojson" }).click();
  await expect(told(page, "Saved in “acre-with-a-notch.geojson”.")).toBeVisible();
  expect(await fileText(page, "acre-with-a-notch.geojson")).toContain('"10 ft"');
});

test("a file that something else changed is written over only when the person says so", async ({ page }) => {
  await saveSample(page);
  await writeFile(page, "acre-with-a-notch.geojson", "somebody else's work");
  await spaceRows(page, "10 ft");
  await save(page);
  await expect(told(page, "was changed by something else")).toBeVisible();
  await expectAccessible(page);
  await picture(page, "file-changed-outside");
  expect(await fileText(page, "acre-with-a-notch.geojson")).toBe("somebody else's work");

  await page.evaluate(() => sessionStorage.setItem("next", "other.geojson"));
  await page.getByRole("button", { name: "Save as another file" }).click();
  await expect(told(page, "Saved in “other.geojson”.")).toBeVisible();
  expect(await fileText(page, "acre-with-a-notch.geojson")).toBe("somebody else's work");

  await writeFile(page, "other.geojson", "changed as well");
  await save(page);
  await page.getByRole("button", { name: "Write over it" }).click();
  await expect(told(page, "Saved in “other.geojson”.")).toBeVisible();
  expect(await fileText(page, "other.geojson")).toContain('"10 ft"');
});

test("a file that was only touched, with the same text in it, is written without a question", async ({ page }) => {
  await saveSample(page);
  await page.waitForTimeout(50);
  await writeFile(page, "acre-with-a-notch.geojson", await fileText(page, "acre-with-a-notch.geojson"));
  await spaceRows(page, "10 ft");
  await expectKept(page);
  await page.getByRole("button", { name: "Close this message" }).click();
  await save(page);
  await expect(told(page, "Saved in")).toBeVisible();
  expect(await fileText(page, "acre-with-a-notch.geojson")).toContain('"10 ft"');
});

test("a file opened through the browser's window is kept at once and saved where it came from", async ({ page }) => {
  await saveSample(page);
  await writeFile(page, "own.geojson", await fileText(page, "acre-with-a-notch.geojson"));
  const menu = await openMenu(page);
  await menu.getByRole("button", { name: "Open your own file" }).click();
  await expect(page.getByRole("button", { name: "Save in own.geojson" })).toBeVisible();
  await expectKept(page);
  await expect(rowSpacing(page)).toHaveValue("9 ft");
  await spaceRows(page, "11 ft");
  await save(page);
  await expect(told(page, "Saved in “own.geojson”.")).toBeVisible();
  expect(await fileText(page, "own.geojson")).toContain('"11 ft"');
  expect(await fileText(page, "acre-with-a-notch.geojson")).toContain('"9 ft"');
});

test("what goes wrong with a file is told in plain words, and the project is still there", async ({ page }) => {
  await saveSample(page);

  await page.evaluate(() => {
    FileSystemFileHandle.prototype.createWritable = () =>
      Promise.reject(new DOMException("full", "QuotaExceededError"));
  });
  await save(page);
  await expect(told(page, "There is no room on the disk for “acre-with-a-notch.geojson”.")).toBeVisible();

  await page.evaluate(() => {
    Object.assign(FileSystemHandle.prototype, {
      queryPermission: () => Promise.resolve("prompt"),
      requestPermission: () => Promise.resolve("denied"),
    });
  });
  await save(page);
  await expect(told(page, "The browser was not allowed to write “acre-with-a-notch.geojson”")).toBeVisible();
  await page.reload();
  await expectOpen(page, "Acre with a notch");

  await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("acre-with-a-notch.geojson"));
  await save(page);
  await expect(told(page, "“acre-with-a-notch.geojson” is no longer where it was.")).toBeVisible();
  await expect(rowSpacing(page)).toHaveValue("9 ft");
  await picture(page, "file-gone");
});

test("where the browser has no file windows a file is downloaded, and opened through the page's own field", async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, "showSaveFilePicker", { value: undefined });
    Object.defineProperty(window, "showOpenFilePicker", { value: undefined });
  });
  await openSample(page);
  const download = page.waitForEvent("download");
  await save(page);
  const path = await (await download).path();
  await expect(told(page, "went to where this browser puts downloads")).toBeVisible();
  const menu = await openMenu(page);
  const chooser = page.waitForEvent("filechooser");
  await menu.getByRole("button", { name: "Open your own file" }).click();
  await (await chooser).setFiles(path);
  await expectOpen(page, "Acre with a notch");
  await expectKept(page);
});
