/** What an evenness asked for leaves to be lost in rows watered together. */
export interface HeadBudget {
  /** Flow of the lowest emitter as a share of the mean, and its pressure head. */
  readonly lowest_ratio: number;
  readonly lowest_m: number;
  /** Head that may be lost between the emitter with most and the one with least. */
  readonly spread_m: number;
}

/**
 * The head budget of rows watered together, of plain emitters (exponent above 0): q_n = q_a · EU / (1 - 1.27 CV/√n), h_n its head, and
 * 2.5 (h_a - h_n) to lose. Keller and Bliesner 1990, from memory; calculation handbook, section 4.6.
 */
export function headBudget(
  mean_m: number,
  exponent: number,
  evenness_ratio: number,
  variation_ratio: number,
  perPlant: number,
): HeadBudget {
  const lowest_ratio = evenness_ratio / (1 - (1.27 * variation_ratio) / Math.sqrt(perPlant));
  const lowest_m = mean_m * lowest_ratio ** (1 / exponent);
  return { lowest_ratio, lowest_m, spread_m: 2.5 * (mean_m - lowest_m) };
}
