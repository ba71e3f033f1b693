import { defineConfig } from "@playwright/test";
import { findBrowser, launchArguments } from "../support/browser.ts";
import { ports } from "./ports.ts";

// Workers read this file again; they get the browser that was found once.
const known = process.env.TAUTROW_JOURNEY_BROWSER;
const search = known === undefined ? await findBrowser() : null;
if (search && !search.browser) throw new Error(`no browser starts: ${search.reason}`);
if (search?.browser) {
  process.env.TAUTROW_JOURNEY_BROWSER = search.browser.executablePath;
  const libraries = search.browser.env.LD_LIBRARY_PATH;
  if (libraries !== undefined) process.env.LD_LIBRARY_PATH = libraries;
}
const executablePath = search?.browser?.executablePath ?? known ?? "";

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.journey.ts",
  outputDir: "../output/journeys",
  workers: 1,
  timeout: 45_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: "../output/journeys.json" }]],
  use: {
    baseURL: `http://127.0.0.1:${ports.page}`,
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath, args: [...launchArguments] },
    trace: "retain-on-failure",
  },
  webServer: {
    command: "node --import tsx tests/journeys/serve.ts",
    cwd: "../..",
    url: `http://127.0.0.1:${ports.host}/`,
    timeout: 120_000,
    reuseExistingServer: false,
  },
});
