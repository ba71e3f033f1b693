/** Values from the smallest up. */
export function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

export function median(values: readonly number[]): number {
  return sorted(values)[Math.floor(values.length / 2)] ?? Number.NaN;
}

/** Prints a series of times in a line. */
export function tell(what: string, values: readonly number[]): void {
  const p95 = sorted(values)[Math.floor(values.length * 0.95)] ?? Number.NaN;
  console.log(`${what.padEnd(34)} median ${median(values).toFixed(2)} ms, p95 ${p95.toFixed(2)} ms`);
}
