/** Sums of lengths carry rounding dust; a pack is not bought for a billionth of one. */
const dust = 1e-9;

/** Fewest packages of one size that cover a quantity in the same unit; none for nothing. */
export function packsOf(quantity: number, size: number): readonly { readonly size: number; readonly count: number }[] {
  const count = Math.ceil(quantity / size - dust);
  return count > 0 ? [{ size, count }] : [];
}

/**
 * Pieces to order: `pieces` and a spare share of them, rounded up to whole pieces: ceil(N (1 + spare)).
 * Source: university lecture notes "Vineyard design and establishment", as quoted in the calculation handbook, section 1.
 */
export function orderOf(pieces: number, spare_ratio: number): number {
  return Math.ceil(pieces * (1 + spare_ratio) - dust);
}
