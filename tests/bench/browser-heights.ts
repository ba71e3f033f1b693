import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "@playwright/test";
import { ports } from "../journeys/ports.ts";
import { heightFile } from "../support/height-file.ts";

/** No task of the page takes longer while a large height file is opened. */
const taskBar_ms = 100;
const cells = 4000;
const viewport = { width: 1280, height: 800 };

/**
 * Opens 4000 x 4000 heights, 64 MB, through the page's own button while tasks and frames are watched: when the file is looked at, when its
 * heights are taken, and when the relief is drawn. Gates nothing.
 */
export async function measureHeights(browser: Browser): Promise<void> {
  const path = inventedFile();
  const page = await browser.newPage({ viewport });
  await page.goto(`http://127.0.0.1:${ports.page}/?sample=acre-with-notch&bench`);
  await page.locator(".tautrow-handle-knob").waitFor();
  await page.waitForTimeout(2500);
  console.log(`\na height file of ${cells} x ${cells} cells, 64 MB, opened on the first sample`);
  await page.getByRole("region", { name: "Ground", exact: true }).getByRole("button", { name: "Ground" }).click();
  await page.getByText("Heights", { exact: true }).click();
  await page.waitForTimeout(1000);
  await tell(page, "nothing at all, for comparison", () => page.waitForTimeout(1500));
  await tell(page, "looking at the file", async () => {
    const chooser = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Open a height file" }).click();
    await (await chooser).setFiles(path);
    await page.getByLabel("Heights are in").waitFor();
  });
  await page.getByLabel("Heights are in").selectOption("m");
  await tell(page, "taking its heights", async () => {
    await page.getByRole("button", { name: "Use these heights" }).click();
    await page.getByRole("button", { name: "Take the heights out" }).waitFor({ timeout: 120_000 });
    await page.waitForTimeout(1500);
  });
  await tell(page, "drawing the relief", async () => {
    const relief = page.getByRole("button", { name: "Relief", exact: true });
    if ((await relief.getAttribute("aria-pressed")) === "false") await relief.click();
    await page.waitForFunction(() => window.tautrowBench?.map?.getSource("relief-contours") !== undefined, null, {
      timeout: 60_000,
    });
    await page.waitForTimeout(1500);
  });
  await page.close();
}

/** Invented hills of 4 km a side around the first sample, in metres of UTM zone 10 north. */
function inventedFile(): string {
  const folder = fileURLToPath(new URL("../output/", import.meta.url));
  mkdirSync(folder, { recursive: true });
  const path = `${folder}heights-${cells}.tif`;
  const file = heightFile({
    width: cells,
    height: cells,
    cell: 1,
    west: 654_900,
    north: 4_337_100,
    epsg: 32610,
    verticalUnit: null,
    noData: -9999,
    heightAt: (column, line) => 420 + 30 * Math.sin(column / 310) + 24 * Math.cos(line / 270) + 0.02 * column,
  });
  writeFileSync(path, file);
  return path;
}

async function tell(page: Page, what: string, act: () => Promise<void>): Promise<void> {
  await page.evaluate(() => window.tautrowBench?.watch());
  await act();
  const watched = await page.evaluate(() => window.tautrowBench?.watched() ?? null);
  if (!watched) throw new Error("nothing was watched");
  const longest_ms = watched.longTasks_ms.reduce((most, each) => Math.max(most, each), 0);
  const task = longest_ms === 0 ? "none over 50 ms" : `${longest_ms.toFixed(0)} ms`;
  const verdict = longest_ms <= taskBar_ms ? "met" : "MISSED";
  console.log(
    `${what}: ${(watched.time_ms / 1000).toFixed(1)} s, longest task ${task} (bar ${taskBar_ms} ms) ${verdict}, longest time between frames ${watched.longestGap_ms.toFixed(0)} ms`,
  );
}
