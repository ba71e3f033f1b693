import { expect, test } from "vitest";
import { journeyCounts, listedJourneys, totalLine, unitCounts } from "./support/test-counts.ts";

const loaded = { status: "passed", assertionResults: [{}] };
const unloaded = { status: "failed", assertionResults: [] };

test("a test file that cannot be loaded counts as a failure", () => {
  const report = { numPassedTests: 3, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 };
  expect(unitCounts({ ...report, testResults: [loaded, unloaded] })).toEqual({ passed: 3, failed: 2, skipped: 3 });
});

test("a journey that passed only when tried again counts as a failure, and so does a fault outside the journeys", () => {
  const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 2 };
  expect(journeyCounts({ stats })).toEqual({ passed: 5, failed: 2, skipped: 2 });
  expect(journeyCounts({ stats, errors: [{}] }).failed).toBe(3);
});

test("journeys are counted from a listing, however deep", () => {
  const spec = { tests: [{}] };
  expect(listedJourneys({ suites: [{ specs: [spec, spec], suites: [{ specs: [spec] }] }] })).toBe(3);
});

test("the last line sums all runners and names skipped tests only when there are any", () => {
  const clean = { passed: 10, failed: 0, skipped: 0 };
  expect(totalLine([clean, { passed: 2, failed: 1, skipped: 0 }])).toBe("12 passed, 1 failed");
  expect(totalLine([clean, { passed: 0, failed: 0, skipped: 4 }])).toBe("10 passed, 0 failed, 4 skipped");
});
