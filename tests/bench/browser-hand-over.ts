import type { Browser, Page } from "@playwright/test";
import { ports } from "../journeys/ports.ts";
import { largeProjectText } from "./large-parcel.ts";
import { type TracedTask, tracedTasks } from "./traced-tasks.ts";

/** The page is held no longer than this at a time. */
const heldBar_ms = 100;
/** Invented ground of 40 ha, planted so that a quarter of a million vines stand on it. */
const vineSpacing_m = 0.64;
const viewport = { width: 1280, height: 800 };
const formats = ["GeoJSON", "CSV", "Shapefile", "GPX", "KMZ"] as const;

/** How long the page is held while a quarter of a million vines leave it, and how long they take, by format. Gates nothing. */
export async function measureHandOver(browser: Browser): Promise<void> {
  const page = await browser.newPage({ viewport });
  const project = JSON.parse(largeProjectText());
  project.tautrow.rows.vineSpacing = vineSpacing_m;
  await page.route("**/large.geojson", (route) =>
    route.fulfill({ contentType: "application/geo+json", body: JSON.stringify(project) }),
  );
  await page.goto(`http://127.0.0.1:${ports.page}/?open=large.geojson&bench`);
  await page.locator(".tautrow-handle-knob").waitFor();
  const counts = await page.evaluate(() => window.tautrowBench?.counts());
  console.log(`\nhanding over ${counts?.vines} vines`);
  await settle(page);
  await page.getByRole("button", { name: "Hand over", exact: true }).click();
  await page.getByRole("radio", { name: "GeoJSON" }).waitFor();
  for (const format of formats) {
    const looking = await watched(browser, page, async () => {
      await page.getByRole("radio", { name: format, exact: true }).check();
      const boxes = page.getByRole("group", { name: "What goes out" }).getByRole("checkbox", { checked: true });
      while ((await boxes.count()) > 0) await boxes.first().uncheck();
      await page.getByRole("checkbox", { name: /^Vines/ }).check();
      await page.locator('.hand-over-preview[aria-busy="false"]', { hasText: "Vines" }).waitFor({ timeout: 120_000 });
    });
    tell(`${format}, seen before it is written`, looking);
    const writing = await watched(browser, page, async () => {
      const download = page.waitForEvent("download", { timeout: 120_000 });
      await page.locator(".hand-over-write").getByRole("button").click();
      await (await download).path();
    });
    tell(`${format}, written`, writing);
    console.log(`  ${await page.locator(".hand-over-write [role=status]").textContent()}`);
  }
  await page.close();
}

interface Held {
  readonly time_ms: number;
  readonly tasks: readonly TracedTask[];
}

async function watched(browser: Browser, page: Page, act: () => Promise<void>): Promise<Held> {
  let time_ms = 0;
  const tasks = await tracedTasks(browser, page, async () => {
    const begun = performance.now();
    await act();
    time_ms = performance.now() - begun;
  });
  return { time_ms, tasks };
}

/** Until nothing of the plan is worked out any more. */
async function settle(page: Page): Promise<void> {
  let quiet = 0;
  while (quiet < 3) {
    const tasks = await page.evaluate(() => window.tautrowBench?.longTasks(2000) ?? []);
    quiet = tasks.length === 0 ? quiet + 1 : 0;
  }
}

function tell(what: string, { time_ms, tasks }: Held): void {
  const longest = tasks.reduce((one, other) => (other.processor_ms > one.processor_ms ? other : one));
  const wall_ms = Math.max(...tasks.map((task) => task.wall_ms));
  console.log(
    `${what}: ${(time_ms / 1000).toFixed(2)} s, longest task ${longest.processor_ms.toFixed(0)} ms of the processor, ${wall_ms.toFixed(0)} ms by the clock (bar ${heldBar_ms} ms) ${longest.processor_ms <= heldBar_ms ? "met" : "MISSED"}`,
  );
}
