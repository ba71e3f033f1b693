import { killAndReopen } from "../bench/keeping/kill-and-reopen.ts";
import { editInTwoTabs } from "../bench/keeping/two-tabs.ts";
import { findBrowser, launchArguments } from "../support/browser.ts";
import { expect, test } from "./guarded.ts";
import { ports } from "./ports.ts";

// Ten of each; `npm run soak` does hundreds.
const runs = 10;
const seed = 1;
const address = `http://127.0.0.1:${ports.page}`;

test.describe.configure({ timeout: 240_000 });

/** The one that the journeys run in, which was looked for once. */
async function browser() {
  const known = process.env.TAUTROW_JOURNEY_BROWSER;
  if (known === undefined) {
    const found = await findBrowser();
    if (!found.browser) throw new Error(found.reason);
    return found.browser;
  }
  const env = Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );
  return { executablePath: known, args: launchArguments, env, source: "system" } as const;
}

test("a browser that is killed at random moments loses no edit older than a second, and every project opens again", async () => {
  const report = await killAndReopen(await browser(), address, runs, seed);
  expect(report.faults).toEqual([]);
  expect(report.runs).toBe(runs);
  expect(report.edits).toBeGreaterThan(runs);
});

test("of edits in two tabs on one project none that was accepted is written over", async () => {
  const report = await editInTwoTabs(await browser(), address, runs, seed);
  expect(report.faults).toEqual([]);
  expect(report.accepted).toBeGreaterThan(3 * runs);
  expect(report.refused).toBeGreaterThan(0);
});
