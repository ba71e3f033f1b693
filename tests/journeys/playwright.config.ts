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

/** Journeys that count seconds or bytes: after all others. */
const alone = /(keep-soak|first-load)\.journey\.ts$/;

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.journey.ts",
  outputDir: "../output/journeys",
  // Drawing in software takes all that two processors have: side by side they are hardly faster, and late.
  workers: 1,
  timeout: 45_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: "../output/journeys.json" }]],
  projects: [
    { name: "together", testIgnore: alone },
    { name: "alone", testMatch: alone, dependencies: ["together"] },
  ],
  use: {
    baseURL: `http://127.0.0.1:${ports.page}`,
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath, args: [...launchArguments] },
    // A trace films every frame, which takes longer than many a journey: only when asked for.
    trace: process.env.TAUTROW_TRACE === undefined ? "off" : "retain-on-failure",
  },
  webServer: {
    command: "node --import tsx tests/journeys/serve.ts",
    cwd: "../..",
    url: `http://127.0.0.1:${ports.host}/`,
    timeout: 120_000,
    reuseExistingServer: false,
  },
});
