/**
 * The section of a trench and what it holds. With sides that stand back `slope_ratio` (horizontal over vertical) the section at a depth D is
 * (W + m D) D, W at the bottom (calculation handbook, section 7).
 */
export function sectionArea_m2(width_m: number, depth_m: number, slope_ratio: number): number {
  return (width_m + slope_ratio * depth_m) * depth_m;
}

/** Depth 1.8 m, bottom 0.6 m, 1.5 to 1: 6 m (calculation handbook, check 7-4). */
export function topWidth_m(width_m: number, depth_m: number, slope_ratio: number): number {
  return width_m + 2 * slope_ratio * depth_m;
}

/**
 * Volume between two depths that go over into each other evenly, m3: the exact integral L (W (a + b) / 2 + m (a2 + a b + b2) / 3), not the
 * average of the end areas, which is too much where sides slope. `length_m` is horizontal, as depths are plumb.
 */
export function prism_m3(width_m: number, from_m: number, to_m: number, slope_ratio: number, length_m: number): number {
  const upright = (width_m * (from_m + to_m)) / 2;
  const sloped = (slope_ratio * (from_m ** 2 + from_m * to_m + to_m ** 2)) / 3;
  return length_m * (upright + sloped);
}

/** Heap beside the trench at 1.5 to 1 that holds `loose_m3pm` a metre: height sqrt(a / 1.5), base three times that (check 7-2). */
export function heapOf(loose_m3pm: number): { readonly height_m: number; readonly base_m: number } {
  const height_m = Math.sqrt(loose_m3pm / heapSlope_ratio);
  return { height_m, base_m: 2 * heapSlope_ratio * height_m };
}

export const heapSlope_ratio = 1.5;
