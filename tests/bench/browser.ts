import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { chromium, type Page } from "@playwright/test";
import { ports } from "../journeys/ports.ts";
import { findBrowser } from "../support/browser.ts";
import { measureHandOver } from "./browser-hand-over.ts";
import { measureHeights } from "./browser-heights.ts";
import { measureLarge } from "./browser-large.ts";
import { median, tell } from "./statistics.ts";

/**
 * Times the built page in Chromium, first opening a large height file (browser-heights.ts) on 40 ha (browser-large.ts) and while a quarter of a million vines leave (browser-hand-over.ts), then on the first sample: the plan at many bearings, and the frames while the bearing handle is dragged
 * against those of an empty map of the same size in the same run. Prints both; gates nothing.
 */
const planBar_ms = 4;
const emitterBar_ms = 30;
const frameBar = 1.5;
const rounds = 4;
const framesPerRound = 90;
const startBearing_deg = 6;
const viewport = { width: 1280, height: 800 };

const { browser: found, reason } = await findBrowser();
if (!found) throw new Error(`no browser starts: ${reason}`);

const root = fileURLToPath(new URL("../..", import.meta.url));
const server = spawn(process.execPath, ["--import", "tsx", "tests/journeys/serve.ts"], {
  cwd: root,
  stdio: ["ignore", "ignore", "inherit"],
});
try {
  const { page: pagePort, host: hostPort } = ports;
  await answer(`http://127.0.0.1:${hostPort}/`);
  const browser = await chromium.launch({
    executablePath: found.executablePath,
    // Without these a frame is rounded up to whole refreshes of a screen, and a ratio of frames with it.
    args: [...found.args, "--disable-gpu-vsync", "--disable-frame-rate-limit"],
    env: { ...found.env },
  });
  console.log(
    `Chromium ${browser.version()}, ${viewport.width} x ${viewport.height}, software rendering unless it found a graphics card`,
  );
  await measureHeights(browser);
  await measureLarge(browser);
  await measureHandOver(browser);
  console.log("\nfirst sample, an acre");
  const app = await browser.newPage({ viewport });
  await app.goto(`http://127.0.0.1:${pagePort}/?sample=acre-with-notch&bench`);
  await app.getByText("Turn to the best").waitFor();
  await app.waitForTimeout(1500);

  await tellPlanTimes(app);
  await tellEmitterTimes(app);

  const box = await app.locator(".map").boundingBox();
  if (!box) throw new Error("the page has no map");
  const empty = await browser.newPage({ viewport });
  await empty.goto(`http://127.0.0.1:${hostPort}/?empty&width=${box.width}&height=${box.height}`);
  await empty.waitForTimeout(1500);
  const [emptyFrames_ms, dragFrames_ms, stillFrames_ms]: [number[], number[], number[]] = [[], [], []];
  // Turn and turn about, so that what else the machine does falls on all alike.
  for (let round = 0; round < rounds; round++) {
    await empty.bringToFront();
    emptyFrames_ms.push(...(await emptyFrames(empty)));
    await app.bringToFront();
    stillFrames_ms.push(...(await stillFrames(app)));
    dragFrames_ms.push(...(await dragFrames(app)));
  }
  await browser.close();
  console.log(
    `map ${box.width} x ${box.height}, ${emptyFrames_ms.length} frames each, one plan a frame while dragging`,
  );
  tell("frame, empty map", emptyFrames_ms);
  tell("frame, plan at rest", stillFrames_ms);
  tell("frame, dragging the bearing", dragFrames_ms);
  const ratio = median(dragFrames_ms) / median(emptyFrames_ms);
  console.log(
    `drag against empty map  ${ratio.toFixed(2)} x at the median (bar ${frameBar}) ${ratio <= frameBar ? "met" : "MISSED"}`,
  );
} finally {
  server.kill();
}

async function tellPlanTimes(page: Page): Promise<void> {
  const bearings = Array.from({ length: 360 }, (_, i) => (i * 37.7) % 180);
  const measure = () =>
    page.evaluate((series) => window.tautrowBench?.planTimes(series) ?? { plan_ms: [], edit_ms: [] }, bearings);
  const cold = await measure();
  const { plan_ms, edit_ms } = await measure();
  if (plan_ms.length !== bearings.length) throw new Error("the page planned less than it was asked to");
  tell("plan(), first series", cold.plan_ms);
  tell("plan(), warm", plan_ms);
  tell("edit of the bearing", edit_ms);
  const met = median(plan_ms) <= planBar_ms;
  console.log(`plan at the median  ${median(plan_ms).toFixed(2)} ms (bar ${planBar_ms} ms) ${met ? "met" : "MISSED"}`);
}

/** What a change of the emitter takes: sets, sizes, pressures and season anew, with trench and shopping list where they change. */
async function tellEmitterTimes(page: Page): Promise<void> {
  const flows = Array.from({ length: 40 }, (_, i) => `${(0.4 + i / 100).toFixed(2)} gal/h`);
  const times_ms = await page.evaluate((series) => window.tautrowBench?.emitterTimes(series) ?? [], flows);
  if (times_ms.length !== flows.length) throw new Error("the page changed the emitter less often than it was asked to");
  tell("another emitter", times_ms);
  const met = median(times_ms) <= emitterBar_ms;
  console.log(
    `another emitter at the median  ${median(times_ms).toFixed(2)} ms (bar ${emitterBar_ms} ms) ${met ? "met" : "MISSED"}`,
  );
}

/** Times between frames of a map that is kept repainting with nothing on it. */
function emptyFrames(page: Page): Promise<number[]> {
  return page.evaluate((frames) => window.host?.frames(frames) ?? [], framesPerRound);
}

/** Times between frames of the page's map, kept repainting with the plan drawn and nothing moving. */
function stillFrames(page: Page): Promise<number[]> {
  return page.evaluate((count) => window.tautrowBench?.stillFrames(count) ?? [], framesPerRound);
}

/** Times between frames while the handle is held and moved a little before every frame. */
async function dragFrames(page: Page): Promise<number[]> {
  const knob = page.getByRole("slider", { name: /^Bearing of the rows, (?!on the chart)/ });
  // Every round begins at the same bearing, and shows that it left it.
  await page.getByLabel("Bearing", { exact: true }).fill(`${startBearing_deg} deg`);
  await page.waitForTimeout(1200);
  const box = await knob.boundingBox();
  if (!box) throw new Error("no handle");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  const times = await page.evaluate(({ frames, x, y }) => window.tautrowBench?.dragFrames(frames, x, y) ?? [], {
    frames: framesPerRound,
    x: box.x + box.width / 2,
    y: box.y + box.height / 2,
  });
  const turned = await knob.getAttribute("aria-valuenow");
  await page.mouse.up();
  await page.waitForTimeout(800);
  if (turned === null || Number(turned) === startBearing_deg)
    throw new Error("the handle did not turn: nothing was measured");
  return times;
}

async function answer(address: string): Promise<void> {
  for (let attempt = 0; attempt < 240; attempt++) {
    const isUp = await fetch(address).then(
      (response) => response.ok,
      () => false,
    );
    if (isUp) return;
    if (server.exitCode !== null) throw new Error("the server ended");
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  throw new Error(`nothing answers at ${address}`);
}
