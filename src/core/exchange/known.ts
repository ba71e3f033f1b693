/** A number as it leaves, or null where it is not known. */
export function known(value: number, as: (value: number) => number = (same) => same): number | null {
  return Number.isFinite(value) ? as(value) : null;
}
