import { z } from "zod";

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const unitReport = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  numPendingTests: z.number(),
  numTodoTests: z.number(),
  testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.unknown()) })),
});

const journeyReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number(), skipped: z.number() }),
  errors: z.array(z.unknown()).optional(),
});

/** Counts of the unit tests' JSON report; a file that could not be loaded has no tests and counts as one failure. */
export function unitCounts(report: unknown): Counts {
  const read = unitReport.parse(report);
  const unloaded = read.testResults.filter((file) => file.status === "failed" && file.assertionResults.length === 0);
  return {
    passed: read.numPassedTests,
    failed: read.numFailedTests + unloaded.length,
    skipped: read.numPendingTests + read.numTodoTests,
  };
}

/** Counts of the journeys' JSON report; a journey that passed only when tried again counts as failed. */
export function journeyCounts(report: unknown): Counts {
  const { stats, errors } = journeyReport.parse(report);
  return {
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky + (errors?.length ?? 0),
    skipped: stats.skipped,
  };
}

interface Suite {
  readonly specs?: readonly { readonly tests: readonly unknown[] }[] | undefined;
  readonly suites?: readonly Suite[] | undefined;
}
const suite: z.ZodType<Suite> = z.lazy(() =>
  z.object({
    specs: z.array(z.object({ tests: z.array(z.unknown()) })).optional(),
    suites: z.array(suite).optional(),
  }),
);

/** How many journeys a listing names. */
export function listedJourneys(listing: unknown): number {
  const count = ({ specs = [], suites = [] }: Suite): number =>
    specs.reduce((sum, spec) => sum + spec.tests.length, 0) + suites.reduce((sum, inner) => sum + count(inner), 0);
  return count(suite.parse(listing));
}

/** "N passed, N failed", with ", N skipped" when there are any. */
export function totalLine(runners: readonly Counts[]): string {
  const sum = (of: keyof Counts) => runners.reduce((total, each) => total + each[of], 0);
  const skipped = sum("skipped");
  return `${sum("passed")} passed, ${sum("failed")} failed${skipped === 0 ? "" : `, ${skipped} skipped`}`;
}
