import type { Browser, Page } from "@playwright/test";
import type { LayoutsSeen } from "../../src/app/bench-hook.ts";
import { ports } from "../journeys/ports.ts";
import { largeParcel, largeProjectText } from "./large-parcel.ts";
import { median, tell } from "./statistics.ts";

/** Layouts that a drag shows in a second, at the least. */
const layoutsBar = 10;
/** Share of the empty map's frame rate that panning keeps, at the least. */
const panBar = 0.5;
const rounds = 3;
const framesPerRound = 60;
const viewport = { width: 1280, height: 800 };
/** Where every vine and post is drawn by itself. */
const vineZoom = 19.2;

/** Rates on 40 ha, an empty map's beside them: bearing and corner drags, and panning over all rows and among the vines. Gates nothing. */
export async function measureLarge(browser: Browser): Promise<void> {
  const app = await browser.newPage({ viewport });
  await app.route("**/large.geojson", (route) =>
    route.fulfill({ contentType: "application/geo+json", body: largeProjectText() }),
  );
  await app.goto(`http://127.0.0.1:${ports.page}/?open=large.geojson&bench`);
  await app.locator(".tautrow-handle-knob").waitFor();
  await app.waitForTimeout(4000);
  const counts = await app.evaluate(() => window.tautrowBench?.counts());
  console.log(
    `\n40 ha: ${counts?.rows} rows, ${counts?.vines} vines, ${counts?.corners} corners (planned ${largeParcel.corners})`,
  );
  const box = await app.locator(".map").boundingBox();
  if (!box) throw new Error("the page has no map");
  const empty = await browser.newPage({ viewport });
  await empty.goto(`http://127.0.0.1:${ports.host}/?empty&width=${box.width}&height=${box.height}`);
  await empty.waitForTimeout(1500);
  const zoomAll = await app.evaluate(() => window.tautrowBench?.map?.getZoom() ?? 0);

  const still: number[] = [];
  const pan: Record<"empty" | "all" | "vines", number[]> = { empty: [], all: [], vines: [] };
  const bearing: LayoutsSeen[] = [];
  const corner: LayoutsSeen[] = [];
  const settled: number[] = [];
  // Turn and turn about, so that what else the machine does falls on all alike.
  for (let round = 0; round < rounds; round++) {
    await empty.bringToFront();
    still.push(...(await empty.evaluate((frames) => window.host?.frames(frames) ?? [], framesPerRound)));
    pan.empty.push(...(await emptyPan(empty)));
    await app.bringToFront();
    await zoomTo(app, zoomAll);
    pan.all.push(...(await pagePan(app)));
    await zoomTo(app, vineZoom);
    pan.vines.push(...(await pagePan(app)));
    await zoomTo(app, zoomAll);
    const turned = await dragBearing(app);
    bearing.push(turned.seen);
    settled.push(...turned.longTasksAfter_ms);
    const dragged = await app.evaluate((frames) => window.tautrowBench?.cornerLayouts(frames, 100), framesPerRound);
    if (dragged) corner.push(dragged);
    await app.waitForTimeout(1500);
  }
  tell("frame, empty map", still);
  tell("frame, empty map panned", pan.empty);
  tell("frame, panned over all rows", pan.all);
  tell("frame, panned among the vines", pan.vines);
  tellRate("panning over all rows", pan.empty, pan.all);
  tellRate("panning among the vines", pan.empty, pan.vines);
  tellLayouts("bearing drag", bearing);
  tellLayouts("corner drag", corner);
  console.log(`after the bearing was let go: ${longTasks(settled)}`);
  await Promise.all([app.close(), empty.close()]);
}

function emptyPan(page: Page): Promise<number[]> {
  return page.evaluate((frames) => window.host?.panFrames(frames) ?? [], framesPerRound);
}

function pagePan(page: Page): Promise<number[]> {
  return page.evaluate((frames) => window.tautrowBench?.panFrames(frames) ?? [], framesPerRound);
}

/** Goes to a zoom and waits until the map stands. */
async function zoomTo(page: Page, zoom: number): Promise<void> {
  await page.evaluate((to) => window.tautrowBench?.map?.jumpTo({ zoom: to }), zoom);
  await page.waitForTimeout(2500);
}

/** Holds the handle and turns it, then lets it go and sees what that costs. */
async function dragBearing(page: Page): Promise<{ seen: LayoutsSeen; longTasksAfter_ms: number[] }> {
  const box = await page.locator(".tautrow-handle-knob").boundingBox();
  if (!box) throw new Error("no handle");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const seen = await page.evaluate(({ frames, at }) => window.tautrowBench?.dragLayouts(frames, at.x, at.y), {
    frames: framesPerRound,
    at: { x, y },
  });
  const after = page.evaluate(() => window.tautrowBench?.longTasks(2500) ?? []);
  await page.mouse.up();
  if (!seen || seen.layouts < 2) throw new Error("the rows did not turn: nothing was measured");
  return { seen, longTasksAfter_ms: await after };
}

function tellRate(what: string, empty: readonly number[], drawn: readonly number[]): void {
  const share = median(empty) / median(drawn);
  console.log(
    `${what}: ${(1000 / median(drawn)).toFixed(1)} frames a second, ${share.toFixed(2)} of an empty map's (bar ${panBar}) ${share >= panBar ? "met" : "MISSED"}`,
  );
}

function tellLayouts(what: string, seen: readonly LayoutsSeen[]): void {
  const rates = seen.map(({ layouts, time_ms }) => (1000 * layouts) / time_ms);
  const rate = median(rates);
  const tasks = seen.flatMap(({ longTasks_ms }) => longTasks_ms);
  console.log(
    `${what}: ${rate.toFixed(1)} layouts a second, ${((1000 * seen.reduce((sum, { frames }) => sum + frames, 0)) / seen.reduce((sum, { time_ms }) => sum + time_ms, 0)).toFixed(1)} frames a second (bar ${layoutsBar} layouts) ${rate >= layoutsBar ? "met" : "MISSED"}; ${longTasks(tasks)}`,
  );
}

function longTasks(tasks_ms: readonly number[]): string {
  if (tasks_ms.length === 0) return "no task over 50 ms";
  return `${tasks_ms.length} tasks over 50 ms, median ${median(tasks_ms).toFixed(0)}, longest ${Math.max(...tasks_ms).toFixed(0)} ms`;
}
