import { si } from "./si.ts";

/**
 * Ground over a pipe where there is traffic, frost or farming: 18 in up to 2 1/2 in pipe, 24 in up to 5 in, 30 in above (NRCS conservation
 * practice standard 430, Irrigation Pipeline). By outside diameter: 2 1/2 in pipe is 73 mm thick, 5 in pipe 141 mm.
 */
export function usualCover_m(outside_mm: number): number {
  if (outside_mm <= 75) return si("length", "18 in");
  return outside_mm <= 145 ? si("length", "24 in") : si("length", "30 in");
}
