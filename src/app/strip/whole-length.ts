import { formatQuantity, type UnitSystem } from "../../core/units.ts";

/** From here on a length is written in kilometres or miles, where whole ones would be too coarse to buy by. */
const far_m: Readonly<Record<UnitSystem, number>> = {
  metric: 10_000,
  us: 16_093.44,
  "metric-bar": 10_000,
  "metric-head": 10_000,
};

/** A long length in whole metres or feet; past what these are read in, in kilometres or miles with two decimals. */
export function wholeLength(length_m: number, units: UnitSystem): string {
  return formatQuantity("length", length_m, units, length_m * (1 + 1e-9) < far_m[units] ? 0 : 2);
}
