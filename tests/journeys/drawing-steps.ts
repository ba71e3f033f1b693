import { readFileSync } from "node:fs";
import type { CDPSession, Page } from "@playwright/test";
import { expect } from "./guarded.ts";
import { openStage } from "./steps.ts";

/** A drawn thing as it stands in the project file. */
export interface FileFeature {
  readonly id?: string | number;
  readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** A place in Sonoma-like hills that nobody owns: invented. */
export const place = { lat: 38.2914, lon: -122.458 } as const;

/** Starts with an empty map, in metres. */
export async function startEmpty(page: Page): Promise<void> {
  await page.goto("/");
  await page.getByRole("radio", { name: "Metric" }).check();
  await page.getByRole("button", { name: "Start with an empty map" }).click();
  await expect(page.getByRole("heading", { name: "Where is your ground?" })).toBeVisible();
}

/** Starts with an empty map that lies at the place. */
export async function startAtPlace(page: Page): Promise<void> {
  await startEmpty(page);
  await page.getByLabel("Latitude and longitude").fill(`${place.lat}, ${place.lon}`);
  await page.getByRole("button", { name: "Go there" }).click();
}

/** Chooses what to draw from the palette. */
export async function choose(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole("button", { name: "Draw", exact: true }).click();
  await page.getByRole("region", { name: "What to draw" }).getByRole("button", { name }).click();
  await expect(bar(page)).toBeVisible();
}

export function bar(page: Page) {
  return page.locator(".sketch-bar");
}

export function panel(page: Page) {
  return page.getByRole("region", { name: "Selected", exact: true });
}

/** A place on the screen as shares of the map's width and height. */
export async function onMap(page: Page, across: number, down: number): Promise<{ x: number; y: number }> {
  const box = await page.locator(".map").boundingBox();
  if (!box) throw new Error("there is no map");
  return { x: box.x + box.width * across, y: box.y + box.height * down };
}

/** Clicks at places of the map, as a hand does: move, wait, press. */
export async function clickPlaces(page: Page, places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [across, down] of places) {
    const { x, y } = await onMap(page, across, down);
    await page.mouse.move(x, y, { steps: 3 });
    await page.waitForTimeout(60);
    await page.mouse.click(x, y);
  }
}

/** What speaks to a screen reader now. */
export function said(page: Page) {
  return page.locator("[aria-live=polite].unseen");
}

/** The project as it would be saved now. */
export async function savedProject(page: Page): Promise<{ readonly features: readonly FileFeature[]; text: string }> {
  await openStage(page, "Hand over");
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: /^Save the project/ }).click();
  const text = readFileSync(await (await waiting).path(), "utf8");
  const read: { readonly features: readonly FileFeature[] } = JSON.parse(text);
  return { features: read.features, text };
}

/** Features of a role in a saved project. */
export async function savedOf(page: Page, role: string): Promise<readonly FileFeature[]> {
  return (await savedProject(page)).features.filter(({ properties }) => properties.role === role);
}

/** Takes the last step back. */
export async function undo(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Undo/ }).first().click();
}

/** Drags by mouse in small moves. */
export async function drag(
  page: Page,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step++) {
    await page.mouse.move(from.x + ((to.x - from.x) * step) / 12, from.y + ((to.y - from.y) * step) / 12);
    await page.waitForTimeout(15);
  }
}

/** Drags by a finger in small moves. */
export async function dragByTouch(
  touch: CDPSession,
  page: Page,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
): Promise<void> {
  const points = (x: number, y: number) => ({ touchPoints: [{ x, y }] });
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", ...points(from.x, from.y) });
  for (let step = 1; step <= 10; step++) {
    const x = from.x + ((to.x - from.x) * step) / 10;
    const y = from.y + ((to.y - from.y) * step) / 10;
    await touch.send("Input.dispatchTouchEvent", { type: "touchMove", ...points(x, y) });
    await page.waitForTimeout(20);
  }
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}
