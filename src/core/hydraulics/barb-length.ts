const fits = {
  none: [0, 0],
  small: [14.38, 1.89],
  standard: [18.91, 1.87],
  large: [23.04, 1.84],
} as const;

/**
 * Length of hose, m, that loses as much head as one emitter's barb standing into a hose: a D^-b with D in mm, the fit attributed to Montalvo (1983) on
 * data of Watters and Keller; from memory.
 */
export function barbLength_m(barb: keyof typeof fits, hoseInside_mm: number): number {
  const [factor, exponent] = fits[barb];
  return factor * hoseInside_mm ** -exponent;
}
