/** Kinematic viscosity of water by temperature, 10 to 30 °C as in the calculation handbook, section 0.1; the rest from memory. */
const known: readonly (readonly [temperature_c: number, viscosity_m2ps: number])[] = [
  [0, 1.787e-6],
  [5, 1.519e-6],
  [10, 1.306e-6],
  [15, 1.139e-6],
  [20, 1.004e-6],
  [25, 0.893e-6],
  [30, 0.801e-6],
  [40, 0.658e-6],
];

/** Kinematic viscosity of water, m2/s: straight in its logarithm between the temperatures of the table, and as at its ends outside of it. */
export function waterViscosity_m2ps(temperature_c: number): number {
  let [below = [0, 0] as const] = known;
  for (const above of known) {
    if (temperature_c <= above[0]) {
      const share = above[0] === below[0] ? 0 : Math.max(0, (temperature_c - below[0]) / (above[0] - below[0]));
      return below[1] ** (1 - share) * above[1] ** share;
    }
    below = above;
  }
  return below[1];
}
