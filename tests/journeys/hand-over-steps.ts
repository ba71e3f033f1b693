import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { unzipSync } from "fflate";
import { expect } from "./guarded.ts";

export interface Saved {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly text: string;
}

/** What a button saves. */
export async function exported(page: Page, name: RegExp | string): Promise<Saved> {
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name, exact: typeof name === "string" }).click();
  const download = await waiting;
  const bytes = new Uint8Array(readFileSync(await download.path()));
  return { file: download.suggestedFilename(), bytes, text: new TextDecoder().decode(bytes) };
}

/** Saves the files of the choice, once the button says what they are, and waits until the page says so. */
export async function saveFiles(page: Page, button: string): Promise<Saved> {
  const saved = await exported(page, button);
  await expect(page.getByText(`${saved.file} is saved`)).toBeVisible();
  return saved;
}

export async function chooseFormat(page: Page, name: string): Promise<void> {
  await page.getByRole("radio", { name, exact: true }).check();
}

/** Ticks these things and no others. */
export async function tickOnly(page: Page, ...things: readonly string[]): Promise<void> {
  const boxes = page.getByRole("group", { name: "What goes out" }).getByRole("checkbox");
  for (const box of await boxes.all()) await box.uncheck();
  for (const thing of things) await page.getByRole("checkbox", { name: new RegExp(`^${thing}\\b`) }).check();
}

/** The texts within a zip. */
export function unpacked(bytes: Uint8Array): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, entry]) => [name, new TextDecoder().decode(entry)]),
  );
}
