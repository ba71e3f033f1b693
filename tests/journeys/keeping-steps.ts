import type { Locator, Page } from "@playwright/test";
import { expect } from "./guarded.ts";
import { handle } from "./steps.ts";

/** The word or two in the top bar that say whether all is kept. */
export function keepingStatus(page: Page): Locator {
  return page.locator(".keeping-status");
}

export function rowSpacing(page: Page): Locator {
  return page.getByLabel("Row spacing", { exact: true });
}

/** Types another row spacing and leaves the field. */
export async function spaceRows(page: Page, typed: string): Promise<void> {
  await rowSpacing(page).fill(typed);
  await rowSpacing(page).press("Enter");
}

/** Waits until the last change is kept. */
export async function expectKept(page: Page): Promise<void> {
  await expect(keepingStatus(page)).toHaveText("Kept");
}

/** The menu with all projects, opened from the bar over the map. */
export async function openMenu(page: Page): Promise<Locator> {
  await page.getByRole("button", { name: "Open…" }).click();
  const menu = page.getByRole("dialog", { name: "Projects" });
  await expect(menu).toBeVisible();
  return menu;
}

/** Waits until the map and its plan are there. */
export async function expectOpen(page: Page, name: string): Promise<void> {
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(name);
  await expect(handle(page)).toBeVisible();
}

/** What is kept, as the browser's database has it: name and newest text by project. */
export function keptProjects(page: Page): Promise<{ id: string; name: string; deleted: boolean; text: string }[]> {
  return page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await asked(indexedDB.open("tautrow"));
    const transaction = database.transaction(["projects", "texts"]);
    const records = await asked(transaction.objectStore("projects").getAll());
    const found = [];
    for (const { id, name, revision, deleted } of records) {
      const kept = await asked(transaction.objectStore("texts").get([id, revision]));
      found.push({ id, name, deleted: deleted !== null, text: kept?.text ?? "" });
    }
    database.close();
    return found;
  });
}
