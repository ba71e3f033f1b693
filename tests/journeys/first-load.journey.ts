import { gzipSync } from "node:zlib";
import type { Page, Route } from "@playwright/test";
import { scriptName } from "../support/page-build.ts";
import { expect, picture, test } from "./guarded.ts";
import { handle, openStage } from "./steps.ts";

/** The promise; tests/budget.test.ts says what it is made of. */
const budget_kB = 620;
/** Pixels of ink in the middle of the map that a sample's rows come to, at the least; without them there are none. */
const leastInk_px = 3000;

test("a sample's rows are drawn from what the page itself names, within 620 kB of compressed script, all else held back", async ({
  page,
  baseURL,
}) => {
  const html = await (await page.request.get(baseURL ?? "")).text();
  const named = new Set([...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file ?? ""));
  const loaded = new Map<string, number>();
  const held: { readonly file: string; readonly route: Route }[] = [];
  let isHolding = true;
  const letThrough = async (route: Route, file: string): Promise<void> => {
    const response = await route.fetch();
    loaded.set(file, gzipSync(await response.body()).length / 1000);
    await route.fulfill({ response });
  };
  await page.route("**/*.js", async (route) => {
    const file = new URL(route.request().url()).pathname.slice(1);
    if (isHolding && !named.has(file) && scriptName(file) !== "maplibre-gl-worker") {
      held.push({ file, route });
      return;
    }
    await letThrough(route, file);
  });

  await page.goto("/?sample=acre-with-notch");
  await expect(handle(page)).toBeVisible();
  // Only what the map's canvas shows is counted.
  await page.addStyleTag({ content: ".tautrow-handle, .row-one-handle { visibility: hidden; }" });
  await expect.poll(() => inkInMap(page), { timeout: 20_000 }).toBeGreaterThan(leastInk_px);
  await picture(page, "first-load");
  const weight_kB = total(loaded);
  const later = held.map(({ file }) => scriptName(file));
  console.log(`rows drawn from ${loaded.size} scripts, ${weight_kB.toFixed(1)} kB; held back: ${later.join(", ")}`);
  expect(weight_kB).toBeLessThanOrEqual(budget_kB);
  expect([...loaded.keys()].map(scriptName)).toContain("maplibre-gl-worker");
  expect([...loaded.keys()].map(scriptName)).toContain("maplibre-gl");
  for (const chosen of ["planting-worker", "compass-reading", "desk", "thing-panel", "hand-over-desk", "keeping"]) {
    expect([...loaded.keys()].map(scriptName)).not.toContain(chosen);
  }

  // What was held back comes after, and the planting area with it.
  isHolding = false;
  for (const { file, route } of held) await letThrough(route, file);
  await openStage(page, "Ground");
  await expect(page.getByRole("region", { name: "Ground", exact: true })).toContainText(
    /planting area[\s\S]*acre|planting area[\s\S]*ha/i,
  );
  await expect.poll(() => [...loaded.keys()].map(scriptName)).toContain("planting-worker");
  console.log(`with what followed by itself: ${loaded.size} scripts, ${total(loaded).toFixed(1)} kB`);
  for (const chosen of ["desk", "hand-over-desk", "imagery-desk"]) {
    expect([...loaded.keys()].map(scriptName)).not.toContain(chosen);
  }
  // A script may still be on its way, and its answer would be gone with the page.
  await page.unrouteAll({ behavior: "wait" });
});

function total(sizes_kB: ReadonlyMap<string, number>): number {
  return [...sizes_kB.values()].reduce((sum, size) => sum + size, 0);
}

/** Pixels as dark as ink in the middle third of the map. */
async function inkInMap(page: Page): Promise<number> {
  const box = await page.locator(".map").boundingBox();
  if (!box) return 0;
  const clip = { x: box.x + box.width / 3, y: box.y + box.height / 3, width: box.width / 3, height: box.height / 3 };
  const shot = await page.screenshot({ clip });
  return page.evaluate(async (png) => {
    const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const drawing = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d");
    if (!drawing) return 0;
    drawing.drawImage(bitmap, 0, 0);
    const { data } = drawing.getImageData(0, 0, bitmap.width, bitmap.height);
    let dark = 0;
    for (let i = 0; i < data.length; i += 4)
      if (Math.max(data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0) < 110) dark++;
    return dark;
  }, shot.toString("base64"));
}
