/** Ground that is one plane. */
export interface PlaneGround {
  readonly kind: "plane";
  /** At the origin of the frame, and how much it rises a metre eastward and northward. */
  readonly origin_m: number;
  readonly east_ratio: number;
  readonly north_ratio: number;
}

/** Heights that spread less than this to the sides of their line, in the mean, do not say which way a plane tilts. */
const leastSpread_m = 0.1;

/**
 * The plane through three heights, or the one with the least squares of what it misses them by when there are more, with its slope and the
 * most it misses one by; null where they are too few or lie in one line. `xy` are their places in the plane. Normal equations about the
 * middle of the places, where they do not mix with the height.
 */
export function planeThrough(
  xy: Float64Array,
  height_m: Float64Array,
): { readonly ground: PlaneGround; readonly slope_ratio: number; readonly miss_m: number } | null {
  const places = [...height_m.keys()];
  const mean = (value: (i: number) => number) => places.reduce((sum, i) => sum + value(i), 0) / places.length;
  const [middleX, middleY] = [mean((i) => Number(xy[2 * i])), mean((i) => Number(xy[2 * i + 1]))];
  const middle_m = mean((i) => Number(height_m[i]));
  const x = (i: number) => Number(xy[2 * i]) - middleX;
  const y = (i: number) => Number(xy[2 * i + 1]) - middleY;
  const z = (i: number) => Number(height_m[i]) - middle_m;
  const [xx, both, yy] = [mean((i) => x(i) * x(i)), mean((i) => x(i) * y(i)), mean((i) => y(i) * y(i))];
  const [xz, yz] = [mean((i) => x(i) * z(i)), mean((i) => y(i) * z(i))];
  // The smaller of the two spreads, squared: across the line that the places lie along.
  const least_m2 = (xx + yy) / 2 - Math.hypot((xx - yy) / 2, both);
  if (places.length < 3 || least_m2 < leastSpread_m ** 2) return null;
  const determinant = xx * yy - both * both;
  const east_ratio = (xz * yy - yz * both) / determinant;
  const north_ratio = (yz * xx - xz * both) / determinant;
  const misses_m = places.map((i) => Math.abs(z(i) - east_ratio * x(i) - north_ratio * y(i)));
  return {
    ground: {
      kind: "plane",
      origin_m: middle_m - east_ratio * middleX - north_ratio * middleY,
      east_ratio,
      north_ratio,
    },
    slope_ratio: Math.hypot(east_ratio, north_ratio),
    miss_m: misses_m.reduce((most, miss) => Math.max(most, miss), 0),
  };
}
