import { randomBytes } from "node:crypto";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { expectKept, expectOpen, keepingStatus, keptProjects, rowSpacing, spaceRows } from "./keeping-steps.ts";
import { openSample } from "./steps.ts";

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
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

const ring = [
  [-76.9, 42.6],
  [-76.8985, 42.6],
  [-76.8985, 42.6012],
  [-76.9, 42.6012],
  [-76.9, 42.6],
];
const parcel = { type: "Feature", properties: { role: "parcel" }, geometry: { type: "Polygon", coordinates: [ring] } };

test("when storage is full the page says so, saves as a file, and keeps what was done as soon as there is room", async ({
  page,
  context,
}) => {
  await page.goto("/");
  const origin = new URL(page.url()).origin;
  const cdp = await context.newCDPSession(page);
  await cdp.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 2_000_000 });
  const tautrow = { version: 1, name: "Full field", units: "us", rows: { rowSpacing: "8 ft" } };
  // Nothing that the browser could press together.
  const remarks = randomBytes(300_000).toString("base64");
  const large = { type: "FeatureCollection", features: [parcel], tautrow, remarks };
  await drop(page, "large.geojson", JSON.stringify(large));
  await expectKept(page);
  let spacing_ft = 8;
  while (spacing_ft < 20 && (await keepingStatus(page).textContent()) !== "Not kept") {
    spacing_ft += 1;
    await spaceRows(page, `${spacing_ft} ft`);
    await page.waitForTimeout(300);
    await expect(keepingStatus(page)).toHaveText(/^(Kept|Not kept)$/);
  }
  await expect(page.getByRole("alert")).toContainText("Not kept: storage is full.");
  await expect(page.getByRole("button", { name: `Undo: row spacing ${spacing_ft} ft` })).toBeVisible();
  const [kept] = await keptProjects(page);
  expect(kept?.text).not.toContain(`"${spacing_ft} ft"`);
  expect(kept?.text).toContain(`"${spacing_ft - 1} ft"`);
  await expectAccessible(page);
  await picture(page, "storage-full");

  await page.evaluate(() => Object.defineProperty(window, "showSaveFilePicker", { value: undefined }));
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file now" }).click();
  expect((await download).suggestedFilename()).toBe("full-field.geojson");
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(keepingStatus(page)).toHaveText("Not kept");

  await cdp.send("Storage.overrideQuotaForOrigin", { origin });
  await page.getByRole("button", { name: "Try again" }).click();
  await expectKept(page);
  await expect(page.getByRole("alert")).toHaveCount(0);
  expect((await keptProjects(page))[0]?.text).toContain(`"${spacing_ft} ft"`);
});

test("a project that was left before it could be kept stays in the page, and one gets back to it", async ({
  page,
  context,
}) => {
  await openSample(page);
  const origin = new URL(page.url()).origin;
  const cdp = await context.newCDPSession(page);
  await cdp.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
  await spaceRows(page, "9 ft");
  await expect(keepingStatus(page)).toHaveText("Not kept");
  await page.getByRole("button", { name: "Open…" }).click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /^Crooked strip/ })
    .click();
  await expectOpen(page, "Crooked strip");
  await expect(page.getByRole("alert")).toContainText("“Acre with a notch” was left before it could be kept.");
  await picture(page, "left-unkept");
  await page.getByRole("button", { name: "Back to it" }).click();
  await expectOpen(page, "Acre with a notch");
  await expect(rowSpacing(page)).toHaveValue("9 ft");
  await cdp.send("Storage.overrideQuotaForOrigin", { origin });
  await page.getByRole("button", { name: "Try again" }).click();
  await expectKept(page);
  expect((await keptProjects(page)).map(({ name }) => name)).toEqual(["Acre with a notch"]);
});

// Headless Chromium has no switch for it that leaves the page itself alone: the script does what such browsers do.
for (const [how, script] of [
  [
    "opening is refused",
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("The user denied permission to access the database.", "SecurityError");
      };
    },
  ],
  ["there is none at all", () => Object.defineProperty(window, "indexedDB", { value: undefined })],
] as const) {
  test(`where the browser lets the page store nothing (${how}) it says so and everything else works`, async ({
    page,
  }) => {
    await page.addInitScript(script);
    await page.goto("/");
    await expect(page.getByRole("status")).toContainText("this browser does not let the page store anything");
    await page.getByRole("button", { name: /^Acre with a notch/ }).click();
    await expectOpen(page, "Acre with a notch");
    await spaceRows(page, "9 ft");
    await expect(page.getByRole("alert")).toContainText("Not kept: this browser does not let the page store anything.");
    await expect(rowSpacing(page)).toHaveValue("9 ft");
    await page.getByRole("button", { name: "Undo: row spacing 9 ft" }).click();
    await expect(rowSpacing(page)).toHaveValue("8 ft");
    await expectAccessible(page);
    await picture(page, `storage-denied-${how.length}`);
  });
}

test("a newer version of the page has the storage: nothing is written, and what was done stays in the page", async ({
  page,
}) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  // As another tab with a newer page would: this one lets go of the storage for it.
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.open("tautrow", 999);
        request.onsuccess = () => {
          request.result.close();
          resolve();
        };
        request.onerror = () => reject(request.error);
      }),
  );
  await spaceRows(page, "10 ft");
  await expect(page.getByRole("alert")).toContainText(
    "Not kept: a newer version of this program keeps the projects now.",
  );
  await expect(rowSpacing(page)).toHaveValue("10 ft");
  expect((await keptProjects(page))[0]?.text).toContain('"9 ft"');
  await expectAccessible(page);
  await picture(page, "storage-newer");
});

test("a project whose newest text is spoilt is told, its raw text can be had, and an earlier state opens and is kept on", async ({
  page,
}) => {
  await openSample(page);
  await spaceRows(page, "9 ft");
  await expectKept(page);
  await spaceRows(page, "10 ft");
  await expectKept(page);
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const request = indexedDB.open("tautrow");
        request.onsuccess = () => {
          const transaction = request.result.transaction(["projects", "texts"], "readwrite");
          const records = transaction.objectStore("projects").getAll();
          records.onsuccess = () => {
            const { id, revision } = records.result[0];
            transaction.objectStore("texts").put({ id, revision, text: "spoilt {" });
          };
          transaction.oncomplete = () => {
            request.result.close();
            resolve();
          };
        };
      }),
  );
  await page.reload();
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("“Acre with a notch” can not be read any more.");
  await expectAccessible(page);
  await picture(page, "unreadable");
  const download = page.waitForEvent("download");
  await alert.getByRole("button", { name: "Download what is kept" }).click();
  expect((await download).suggestedFilename()).toBe("acre-with-a-notch.txt");
  await alert.getByRole("button", { name: /^Open the state of/ }).click();
  await expectOpen(page, "Acre with a notch");
  await expect(rowSpacing(page)).toHaveValue("9 ft");
  await spaceRows(page, "11 ft");
  await expectKept(page);
  await page.reload();
  await expect(rowSpacing(page)).toHaveValue("11 ft");
});

test("a file of a newer format is opened to look at: no edit, no saving over it, and the reason is told", async ({
  page,
}) => {
  const newer = {
    type: "FeatureCollection",
    features: [parcel],
    tautrow: { version: 2, name: "From the future", rows: { rowSpacing: "7 ft" } },
  };
  await page.goto("/");
  await drop(page, "future.geojson", JSON.stringify(newer));
  await expect(keepingStatus(page)).toHaveText("Kept");
  const before = (await keptProjects(page))[0]?.text ?? "";
  await spaceRows(page, "9 ft");
  await expect(page.getByRole("status").filter({ hasText: "project format 2" })).toBeVisible();
  await expectAccessible(page);
  await picture(page, "newer-file");
  await page.getByRole("button", { name: /^Save/ }).first().click();
  await expect(page.getByRole("status").filter({ hasText: "project format 2" })).toBeVisible();
  await page.waitForTimeout(1000);
  expect((await keptProjects(page))[0]?.text).toBe(before);
  expect(JSON.parse(before).tautrow).toEqual(newer.tautrow);
});

test("a file without settings is written as version 1 at the first change of a setting", async ({ page }) => {
  await page.goto("/");
  await drop(page, "field.geojson", JSON.stringify({ type: "FeatureCollection", features: [parcel] }));
  await expectKept(page);
  expect(JSON.parse((await keptProjects(page))[0]?.text ?? "{}").tautrow).toBeUndefined();
  await spaceRows(page, "3 m");
  await expect.poll(async () => JSON.parse((await keptProjects(page))[0]?.text ?? "{}").tautrow?.version).toBe(1);
});

test("an address of a project that is not kept here says so on the first screen", async ({ page }) => {
  await page.goto("/#project=0b6d0c2e-0000-4000-8000-000000000000");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Tautrow");
  await expect(page.getByRole("status")).toContainText("no longer kept in this browser");
});
