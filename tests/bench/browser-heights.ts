import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "@playwright/test";
import { ports } from "../journeys/ports.ts";
import { heightFile } from "../support/height-file.ts";
import { tracedTasks } from "./traced-tasks.ts";

/** No task of the page takes longer while a large height file is opened. */
const taskBar_ms = 100;
const cells = 4000;
const viewport = { width: 1280, height: 800 };

/**
 * Opens 4000 x 4000 heights, 64 MB, through the page's own button while its tasks and frames are watched: when the file is looked at, when
 * its heights are taken and the relief is drawn, and when the rows are turned over it. Gates nothing.
 */
export async function measureHeights(browser: Browser): Promise<void> {
  const path = inventedFile();
  const page = await browser.newPage({ viewport });
  // Before anything is chosen the relief comes by itself; here it is measured apart.
  await page.addInitScript(() => localStorage.setItem("tautrow-relief", "off"));
  await page.goto(`http://127.0.0.1:${ports.page}/?sample=acre-with-notch&bench`);
  await page.locator(".tautrow-handle-knob").waitFor();
  await page.waitForTimeout(3000);
  console.log(`\na height file of ${cells} x ${cells} cells, 64 MB, opened on the first sample`);
  console.log(
    "tasks by the clock, and by the processor's work in them; the rest is waiting for software rendering or others",
  );
  await page.getByRole("region", { name: "Ground", exact: true }).getByRole("button", { name: "Ground" }).click();
  await page.locator("details.stage-part", { hasText: "Heights" }).locator("summary").click();
  await page.waitForTimeout(1000);
  const watch = (what: string, act: () => Promise<void>) => tell(browser, page, what, act);
  await watch("zooming without heights, for comparison", async () => {
    await page.getByRole("button", { name: "Zoom in" }).click();
    await page.waitForTimeout(1200);
    await page.getByRole("button", { name: "Zoom out" }).click();
    await page.waitForTimeout(1200);
  });
  await watch("looking at the file", async () => {
    const chooser = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Open a height file" }).click();
    await (await chooser).setFiles(path);
    await page.getByLabel("Heights are in").waitFor();
  });
  await page.getByLabel("Heights are in").selectOption("m");
  await watch("taking its heights", async () => {
    await page.getByRole("button", { name: "Use these heights" }).click();
    await page.getByRole("button", { name: "Take the heights out" }).waitFor({ timeout: 120_000 });
    await page.waitForTimeout(1500);
  });
  await watch("drawing the relief", async () => {
    await page.getByRole("button", { name: "Relief", exact: true }).click();
    await page.waitForFunction(() => window.tautrowBench?.map?.getSource("relief-contours") !== undefined, null, {
      timeout: 60_000,
    });
    await page.waitForTimeout(1500);
  });
  await watch("turning the rows over it", async () => {
    const knob = page.locator(".tautrow-handle-knob");
    await knob.focus();
    for (let press = 0; press < 10; press++) await page.keyboard.press("ArrowRight");
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

async function tell(browser: Browser, page: Page, what: string, act: () => Promise<void>): Promise<void> {
  await page.evaluate(() => window.tautrowBench?.watch());
  const tasks = await tracedTasks(browser, page, act);
  const watched = await page.evaluate(() => window.tautrowBench?.watched() ?? null);
  if (!watched) throw new Error("nothing was watched");
  const wall_ms = Math.max(...tasks.map((task) => task.wall_ms));
  const processor_ms = Math.max(...tasks.map((task) => task.processor_ms));
  const verdict = wall_ms <= taskBar_ms ? "met" : processor_ms <= taskBar_ms ? "met by its own work" : "MISSED";
  console.log(
    [
      `${what}: ${(watched.time_ms / 1000).toFixed(1)} s`,
      `longest task ${wall_ms.toFixed(0)} ms, by its own work ${processor_ms.toFixed(0)} ms (bar ${taskBar_ms} ms) ${verdict}`,
      `${watched.longTasks_ms.length} over 50 ms`,
      `longest time between frames ${watched.longestGap_ms.toFixed(0)} ms`,
    ].join(", "),
  );
}
