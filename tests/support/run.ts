import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { findBrowser } from "./browser.ts";
import { missingPrograms, programs } from "./outside.ts";
import { type Counts, journeyCounts, listedJourneys, totalLine, unitCounts } from "./test-counts.ts";

/**
 * `npm test`: the unit tests, then the journeys in a real browser, then one line with the sum of both. Without a browser the journeys
 * are counted as skipped and said to be; with CI=true that is a failure.
 */
const unitReport = "tests/output/unit.json";
const journeyReport = "tests/output/journeys.json";
const journeyConfig = "tests/journeys/playwright.config.ts";

mkdirSync("tests/output", { recursive: true });
const unit = runner(
  ["vitest", "run", "--reporter=default", "--reporter=json", `--outputFile.json=${unitReport}`],
  unitReport,
  unitCounts,
);
const journeys = await journeysInBrowser();
const failedToRun = [unit, journeys].some((each) => each.status !== 0);
const missing = missingPrograms();
if (missing.length > 0) {
  const wanted = [...new Set(missing.map((program) => programs[program].package))].join(" ");
  console.log(`Not here, so what they read back was skipped: ${missing.join(", ")} (Debian packages: ${wanted}).`);
}
console.log(totalLine([unit.counts, journeys.counts]));
process.exitCode = failedToRun || unit.counts.failed + journeys.counts.failed > 0 ? 1 : 0;

async function journeysInBrowser(): Promise<{ readonly status: number; readonly counts: Counts }> {
  const { browser, reason } = await findBrowser();
  if (browser !== null) return runner(["playwright", "test", "-c", journeyConfig], journeyReport, journeyCounts);
  const { stdout } = spawnSync("npx", ["playwright", "test", "-c", journeyConfig, "--list", "--reporter=json"], {
    encoding: "utf8",
    // The configuration looks for a browser unless it is told one; a listing starts none.
    env: { ...process.env, TAUTROW_JOURNEY_BROWSER: "none" },
  });
  const count = listedJourneys(JSON.parse(stdout));
  const isFailure = process.env.CI === "true";
  console.log(
    [
      "",
      "!".repeat(100),
      `NO BROWSER CAN START HERE (${reason}).`,
      `The ${count} browser tests were ${isFailure ? "NOT RUN, which fails this run" : "SKIPPED"}.`,
      "Set CHROMIUM_PATH to a Chromium, or install one.",
      "!".repeat(100),
      "",
    ].join("\n"),
  );
  const counts = isFailure ? { passed: 0, failed: count, skipped: 0 } : { passed: 0, failed: 0, skipped: count };
  return { status: isFailure ? 1 : 0, counts };
}

/** Runs one runner to its end and counts from the report it leaves; one that leaves none counts as one failure. */
function runner(command: readonly string[], report: string, counted: (report: unknown) => Counts) {
  rmSync(report, { force: true });
  const status = spawnSync("npx", [...command], { stdio: "inherit" }).status ?? 1;
  if (!existsSync(report)) {
    console.log(`${command.slice(0, 2).join(" ")} left no report: counted as one failure.`);
    return { status: 1, counts: { passed: 0, failed: 1, skipped: 0 } };
  }
  const counts = counted(JSON.parse(readFileSync(report, "utf8")));
  // A runner may fail outside its tests: a file that cannot be loaded, a global check. That must not read "0 failed".
  return { status, counts: status !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts };
}
