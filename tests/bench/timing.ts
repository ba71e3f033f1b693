/** One way of doing a job, to be timed against others. */
export interface Contestant {
  readonly name: string;
  readonly run: () => unknown;
  /** Rounds this one takes part in; slow ones get fewer. */
  readonly rounds: number;
}

/**
 * Best time of each contestant in milliseconds: warmed up, then run in turns so that a busy moment of the machine strikes all alike.
 * Quick jobs are repeated within a round until it lasts about ten milliseconds.
 */
export function bestTimes(contestants: readonly Contestant[]): number[] {
  const repeats = contestants.map(({ run }) => {
    const first = timed(run, 1);
    // A second look: the first call pays for compiling.
    const once = first > 50 ? first : Math.min(timed(run, 1), timed(run, 1));
    return Math.max(1, Math.ceil(10 / Math.max(once, 1e-4)));
  });
  const best = contestants.map(() => Infinity);
  const longest = Math.max(...contestants.map(({ rounds }) => rounds));
  for (let round = 0; round < longest; round++) {
    contestants.forEach(({ run, rounds }, i) => {
      if (round >= rounds) return;
      const times = repeats[i] ?? 1;
      best[i] = Math.min(best[i] ?? Infinity, timed(run, times) / times);
    });
  }
  return best;
}

function timed(run: () => unknown, times: number): number {
  const begun = performance.now();
  for (let i = 0; i < times; i++) run();
  return performance.now() - begun;
}

/** Table with aligned columns; the first column is left-aligned. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join("  "),
    )
    .join("\n");
}

/** A time that fits the eye: microseconds, milliseconds or seconds. */
export function spoken(ms: number): string {
  if (ms < 1) return `${(1000 * ms).toPrecision(3)} us`;
  return ms < 1000 ? `${ms.toPrecision(3)} ms` : `${(ms / 1000).toPrecision(3)} s`;
}
