/** Where laminar flow ends. */
export const laminarReynolds = 2000;
/**
 * Blasius' loss is nearly half as much again as the laminar one at Re 2000. A flow between the two has to have a loss too, or a network could have
 * no answer at all: the loss goes straight from one to the other over the first of these shares of the flow, and over the next where many pipes in a
 * row keep jumping to and fro.
 */
export const leap_ratios = [1e-5, 1e-2, 1e-1] as const;

/** Friction factor of laminar flow, 64/Re. */
export function laminarFactor(reynolds: number): number {
  return 64 / reynolds;
}

/** Blasius' friction factor of smooth pipe, Re 2000 to 100 000; here beyond as well. */
export function blasiusFactor(reynolds: number): number {
  return 0.3164 * reynolds ** -0.25;
}

/** Swamee and Jain's friction factor, from Re 4000 on; roughness as a share of the inside diameter. */
export function swameeJainFactor(reynolds: number, roughness_ratio: number): number {
  return 0.25 / Math.log10(roughness_ratio / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/**
 * Friction factor between Re 2000 and 4000 as EPANET has it: the cubic that leaves laminar flow and meets Swamee and Jain's
 * (Dunlop 1991, as EPANET's manual prints it).
 */
export function betweenFactor(reynolds: number, roughness_ratio: number): number {
  const inner = roughness_ratio / 3.7 + 5.74 / 4000 ** 0.9;
  const y3 = -0.86858896 * Math.log(inner);
  const fa = y3 ** -2;
  const fb = fa * (2 - 0.00514215 / (inner * y3));
  const r = reynolds / laminarReynolds;
  const x1 = 7 * fa - fb;
  const x2 = 0.128 - 17 * fa + 2.5 * fb;
  const x3 = -0.128 + 13 * fa - 2 * fb;
  const x4 = r * (0.032 - 3 * fa + 0.5 * fb);
  return x1 + r * (x2 + r * (x3 + x4));
}

/** Churchill's friction factor (1977), for any flow; roughness as a share of the inside diameter. To compare with: no choice of ours. */
export function churchillFactor(reynolds: number, roughness_ratio: number): number {
  const a = (-2.457 * Math.log((7 / reynolds) ** 0.9 + 0.27 * roughness_ratio)) ** 16;
  const b = (37530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}
