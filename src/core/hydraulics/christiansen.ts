/**
 * Share of a plain pipe's loss that is left where the flow leaves through equal outlets, the first a whole spacing in: the sum itself,
 * Σ iᵐ / N^(m+1), with m the exponent of the flow.
 */
export function exactOutletFactor(outlets: number, exponent: number): number {
  let sum = 0;
  for (let i = 1; i <= outlets; i++) sum += i ** exponent;
  return sum / outlets ** (exponent + 1);
}

/** Christiansen's short form of it (1942): 1/(m+1) + 1/2N + √(m−1)/6N². */
export function christiansenFactor(outlets: number, exponent: number): number {
  return 1 / (exponent + 1) + 1 / (2 * outlets) + Math.sqrt(exponent - 1) / (6 * outlets ** 2);
}

/** As Christiansen's, with the first outlet half a spacing in (Jensen and Fratini 1957). */
export function halfSpacingFactor(outlets: number, exponent: number): number {
  const shared = 1 / (exponent + 1) + Math.sqrt(exponent - 1) / (6 * outlets ** 2);
  return ((2 * outlets) / (2 * outlets - 1)) * shared;
}
