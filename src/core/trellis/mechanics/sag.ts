/** Sag of a span at mid-bay, m: w L2 / (8 T), the parabola. 0.5 N/m, 100 m, 1000 N: 0.625 m. */
export function sag_m(weight_npm: number, span_m: number, tension_n: number): number {
  return (weight_npm * span_m ** 2) / (8 * tension_n);
}

/** Length of the wire in a span, m: L (1 + 8 d2 / (3 L2)), first term of the parabola's series. */
export function arc_m(span_m: number, sag: number): number {
  return span_m * (1 + (8 * sag ** 2) / (3 * span_m ** 2));
}

/** Tension at the supports, N: T + w d. */
export function supportTension_n(tension_n: number, weight_npm: number, sag: number): number {
  return tension_n + weight_npm * sag;
}

/** The same of the exact catenary, a = T / w: sag a (cosh(L/2a) - 1), length 2 a sinh(L/2a), end tension T cosh(L/2a). */
export function catenary(weight_npm: number, span_m: number, tension_n: number) {
  const a_m = tension_n / weight_npm;
  const half = span_m / (2 * a_m);
  return {
    // cosh(x) - 1 = 2 sinh2(x/2) keeps its digits where x is small.
    sag_m: 2 * a_m * Math.sinh(half / 2) ** 2,
    length_m: 2 * a_m * Math.sinh(half),
    supportTension_n: tension_n * Math.cosh(half),
  };
}

/** Tension from a pull at mid-span, N: P L / (4 d), as the board and fish scale of extension notes measure it. */
export function tensionFromPull_n(pull_n: number, span_m: number, drop_m: number): number {
  return (pull_n * span_m) / (4 * drop_m);
}

/** How far a wire at its tension goes down under a weight at mid-span, m: P L / (4 T). */
export function dropUnderWeight_m(weight_n: number, span_m: number, tension_n: number): number {
  return (weight_n * span_m) / (4 * tension_n);
}
