import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import { test as base, expect, type Page } from "@playwright/test";

/** A page that may not complain: an error on its console, an uncaught error or a request to anywhere else fails the journey. */
export const test = base.extend({
  page: async ({ page }, use) => {
    const complaints: string[] = [];
    page.on("console", (message) => {
      if (message.type() === "error") complaints.push(`console: ${message.text()}`);
    });
    page.on("pageerror", (error) => complaints.push(`uncaught: ${error.message}`));
    page.on("request", (request) => {
      const url = new URL(request.url());
      const isLocal = url.hostname === "127.0.0.1" || url.protocol === "data:" || url.protocol === "blob:";
      if (!isLocal) complaints.push(`request: ${request.url()}`);
    });
    await use(page);
    expect(complaints).toEqual([]);
  },
});

export { expect };

const screens = fileURLToPath(new URL("../output/screens/", import.meta.url));

/** Keeps a picture of the page for people to look at. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync(screens, { recursive: true });
  await page.screenshot({ path: `${screens}${name}.png` });
}

/** No violation that axe knows of, at any level. */
export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`);
  expect(told).toEqual([]);
}
