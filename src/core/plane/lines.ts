/**
 * Parallel lines across the turned plane: line i lies at v = first_m + i * spacing_m.
 * `spacing_m` is positive; a single line may carry any positive spacing.
 */
export interface Lines {
  readonly first_m: number;
  readonly spacing_m: number;
  readonly count: number;
}

/**
 * Intervals of u along each line: those of line i are start[i] to start[i + 1]; interval n runs from u[2n] to u[2n + 1] and was bounded
 * there by cause[2n] and cause[2n + 1] (what the numbers mean is the maker's affair). Disjoint and ascending within a line.
 */
export interface LineIntervals {
  readonly start: Int32Array;
  readonly u: Float64Array;
  readonly cause: Int32Array;
}

/** The lines at whole spacings from `through_m` that lie within [from_m, to_m], a micrometre beyond included. */
export function linesWithin(from_m: number, to_m: number, spacing_m: number, through_m: number): Lines {
  const lowest = Math.ceil((from_m - through_m - 1e-6) / spacing_m);
  const highest = Math.floor((to_m - through_m + 1e-6) / spacing_m);
  return { first_m: through_m + lowest * spacing_m, spacing_m, count: Math.max(0, highest - lowest + 1) };
}
