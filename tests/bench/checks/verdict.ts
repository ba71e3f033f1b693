/** What one random case showed: sentences about what is wrong (none when all is well), and the largest difference met, in the check's own unit. */
export interface Verdict {
  readonly faults: readonly string[];
  readonly worst: number;
}

/** Verdicts of many seeds in one. */
export function tally(seeds: Iterable<number>, check: (seed: number) => Verdict): Verdict {
  const faults: string[] = [];
  let worst = 0;
  for (const seed of seeds) {
    const verdict = check(seed);
    faults.push(...verdict.faults);
    worst = Math.max(worst, verdict.worst);
  }
  return { faults, worst };
}

/** Seeds first, first + 1, … */
export function seedsFrom(first: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => first + i);
}
