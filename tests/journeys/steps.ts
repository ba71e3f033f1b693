import type { Locator, Page } from "@playwright/test";
import { expect } from "./guarded.ts";

/** Opens the page with a sample and waits until its rows are drawn. */
export async function openSample(page: Page, name = "acre-with-notch", more = ""): Promise<void> {
  await page.goto(`/?sample=${name}${more}`);
  await expect(rowButtons(page).first()).toBeVisible();
  await expect(handle(page)).toBeVisible();
}

export function handle(page: Page): Locator {
  return page.getByRole("slider", { name: /^Bearing of the rows, (?!on the chart)/ });
}

export function chart(page: Page): Locator {
  return page.getByRole("slider", { name: "Bearing of the rows, on the chart" });
}

export function rowButtons(page: Page): Locator {
  return page.locator(".row-list tbody th button");
}

/** Opens a step that is closed. */
export async function openStage(page: Page, name: string): Promise<void> {
  const button = page.getByRole("region", { name, exact: true }).getByRole("button", { name, exact: true });
  if ((await button.getAttribute("aria-expanded")) === "false") await button.click();
  await expect(button).toHaveAttribute("aria-expanded", "true");
}

/** Opens a file of one's own through the file window that every browser has. */
export async function openOwnFile(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(() => Reflect.deleteProperty(window, "showOpenFilePicker"));
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open your own file" }).click();
  await (await chooser).setFiles({ name, mimeType: "application/geo+json", buffer: Buffer.from(text) });
}

/** The one line that a stage says of itself. */
export async function result(page: Page, name: string): Promise<string> {
  return (await page.getByRole("region", { name, exact: true }).locator(".stage-result").textContent()) ?? "";
}

export async function bearingOf(slider: Locator): Promise<number> {
  return Number(await slider.getAttribute("aria-valuenow"));
}

export async function middle(locator: Locator): Promise<{ x: number; y: number }> {
  const box = await locator.boundingBox();
  if (!box) throw new Error("it is not on the page");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Pixels of a part of the page that are close to a colour. */
export async function pixelsLike(
  page: Page,
  clip: { x: number; y: number; width: number; height: number },
  colour: readonly [number, number, number],
): Promise<number> {
  const image = (await page.screenshot({ clip })).toString("base64");
  return page.evaluate(
    async ({ source, wanted }) => {
      const bytes = Uint8Array.from(atob(source), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
      const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d");
      if (!context) throw new Error("no canvas to read the picture with");
      context.drawImage(bitmap, 0, 0);
      const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
      let count = 0;
      for (let i = 0; i < data.length; i += 4) {
        const apart = [0, 1, 2].map((k) => Math.abs((data[i + k] ?? 0) - (wanted[k] ?? 0)));
        if (Math.max(...apart) < 40) count++;
      }
      return count;
    },
    { source: image, wanted: [...colour] },
  );
}
