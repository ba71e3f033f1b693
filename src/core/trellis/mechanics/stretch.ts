import { steelExpansion_perK, steelModulus_pa } from "./steel.ts";

/** How much a wire stretches, m: T L / (A E). 2.5 mm, 100 m, 890 N: 0.0906547 m. Hooke's law. */
export function stretch_m(tension_n: number, length_m: number, area_m2: number, modulus_pa = steelModulus_pa): number {
  return (tension_n * length_m) / (area_m2 * modulus_pa);
}

/** Tension that a straight wire between fixed ends gains when it warms by so much, N (cooling adds): -E A a dt. */
export function thermalTension_n(area_m2: number, warming_k: number, modulus_pa = steelModulus_pa): number {
  return -modulus_pa * area_m2 * steelExpansion_perK * warming_k;
}

/** A hung wire in one state: its tension, N, and what it carries, N/m. */
export interface HungState {
  readonly tension_n: number;
  readonly weight_npm: number;
}

/**
 * Tension of one span between fixed supports when its load and temperature change, N: solves
 * T2 - w2^2 L^2 E A / (24 T2^2) = T1 - w1^2 L^2 E A / (24 T1^2) - E A a dt by bisection; the left side rises with T2. Never under a
 * millionth of a newton. Source: the change of state of overhead lines, any line-design text, from memory.
 */
export function changedTension_n(
  from: HungState,
  weight_npm: number,
  span_m: number,
  area_m2: number,
  warming_k: number,
): number {
  const stiffness_n = steelModulus_pa * area_m2;
  const slack = (w: number) => ((w * span_m) ** 2 * stiffness_n) / 24;
  const right = from.tension_n - slack(from.weight_npm) / from.tension_n ** 2 + thermalTension_n(area_m2, warming_k);
  let low_n = 1e-6;
  let high_n = Math.max(from.tension_n, 1);
  const excess = (t: number) => t - slack(weight_npm) / t ** 2 - right;
  while (excess(high_n) < 0) high_n *= 2;
  for (let i = 0; i < 200 && high_n - low_n > 1e-9 * high_n; i++) {
    const middle_n = (low_n + high_n) / 2;
    if (excess(middle_n) < 0) low_n = middle_n;
    else high_n = middle_n;
  }
  return (low_n + high_n) / 2;
}
