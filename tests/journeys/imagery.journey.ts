import { deflateSync } from "node:zlib";
import type { Page } from "@playwright/test";
import { savedProject } from "./drawing-steps.ts";
import { expect, expectAccessible, picture, test } from "./guarded.ts";
import { ports } from "./ports.ts";
import { openSample, pixelsLike } from "./steps.ts";

test.use({ actionTimeout: 10_000 });

/** A colour that nothing else on the page has: invented ground, seen from above. */
const violet = [150, 70, 190] as const;
const address = `http://127.0.0.1:${ports.page}/tiles/{z}/{x}/{y}.png`;

/** A tile of one colour. */
function tile(): Buffer {
  const row = Buffer.concat([Buffer.from([0]), Buffer.concat(Array.from({ length: 256 }, () => Buffer.from(violet)))]);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(256, 0);
  header.writeUInt32BE(256, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(Buffer.concat(Array.from({ length: 256 }, () => row)))),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const named = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc(named));
  return Buffer.concat([length, named, check]);
}

/** Cyclic redundancy check of PNG (W3C PNG specification, annex D). */
function crc(data: Buffer): number {
  let rest = 0xffffffff;
  for (const byte of data) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}

async function serveTiles(page: Page, body: Buffer): Promise<() => number> {
  let served = 0;
  await page.route("**/tiles/**", async (route) => {
    served++;
    await route.fulfill({ status: 200, contentType: "image/png", body });
  });
  return () => served;
}

async function picturePixels(page: Page): Promise<number> {
  const map = await page.locator(".map").boundingBox();
  if (!map) throw new Error("there is no map");
  return pixelsLike(page, { x: map.x + map.width - 420, y: map.y + map.height - 85, width: 280, height: 45 }, violet);
}

async function bring(page: Page, template: string): Promise<void> {
  await page.getByRole("button", { name: "Picture" }).click();
  await page.getByLabel("Address of the tiles").fill(template);
  await page.getByLabel("Whose picture it is").fill("Invented ground <b>of nobody</b>");
  await page.getByRole("button", { name: "Show the picture" }).click();
}

test("one's own tiles are shown with their attribution, kept on this device, and taken away again", async ({
  page,
}) => {
  test.slow();
  const served = await serveTiles(page, tile());
  await openSample(page);
  const before = (await savedProject(page)).text;
  expect(served()).toBe(0);
  expect(await picturePixels(page)).toBe(0);
  await bring(page, address);
  await expect.poll(() => picturePixels(page)).toBeGreaterThan(10_000);
  // Plain text: what someone wrote there is no part of the page.
  await expect(page.locator(".imagery-attribution")).toHaveText("Invented ground <b>of nobody</b>");
  await expectAccessible(page);
  await picture(page, "imagery-on");
  await page.getByLabel("Strength").fill("40");
  await expect.poll(() => picturePixels(page)).toBe(0);
  await page.getByLabel("Strength").fill("100");
  await expect.poll(() => picturePixels(page)).toBeGreaterThan(10_000);
  expect((await savedProject(page)).text).toBe(before);

  // It is still there after a reload, and not asked for while it is off.
  await openSample(page);
  await expect.poll(() => picturePixels(page)).toBeGreaterThan(10_000);
  await page.getByRole("button", { name: "Picture" }).click();
  await page.getByLabel("Show it").uncheck();
  await expect.poll(() => picturePixels(page)).toBe(0);
  await expect(page.locator(".imagery-attribution")).toBeHidden();
  const asked = served();
  await page.getByRole("button", { name: "Zoom out" }).click();
  await page.waitForTimeout(600);
  expect(served()).toBe(asked);
  await page.getByRole("button", { name: "Remove it" }).click();
  await page.getByRole("button", { name: "Close" }).click();
  await openSample(page);
  await page.waitForTimeout(500);
  expect(served()).toBe(asked);
});

test("an address that can not be used gets a sentence", async ({ page }) => {
  await openSample(page);
  await bring(page, "https://tiles.example/{z}/{x}.png");
  await expect(page.getByRole("alert")).toHaveText("The address needs {y} where the tile's numbers go.");
  await page.getByLabel("Address of the tiles").fill("http://tiles.example/{z}/{x}/{y}.png");
  await page.getByRole("button", { name: "Show the picture" }).click();
  await expect(page.getByRole("alert")).toContainText("must begin with https://");
  await expectAccessible(page);
  await picture(page, "imagery-refused");
});

test("tiles that are none are told once, and the map goes on", async ({ page }) => {
  await serveTiles(page, Buffer.from("no picture at all"));
  await openSample(page);
  await bring(page, address);
  await expect(page.getByText(/Some tiles of the picture could not be shown/)).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Close" }).click();
  await page.getByRole("button", { name: "Good" }).click();
  await page.getByRole("button", { name: "Zoom out" }).click();
  await page.waitForTimeout(800);
  await expect(page.getByText(/Some tiles of the picture could not be shown/)).toHaveCount(0);
});

test("denied storage does not keep the picture from being shown", async ({ page }) => {
  await serveTiles(page, tile());
  await page.addInitScript(() => {
    Object.defineProperty(window, "localStorage", {
      get: () => {
        throw new DOMException("denied", "SecurityError");
      },
    });
  });
  await openSample(page);
  await bring(page, address);
  await page.waitForTimeout(2000);
  await picture(page, "imagery-denied-storage");
  await expect(page.getByText(/it holds until the page is closed/)).toBeVisible();
});
