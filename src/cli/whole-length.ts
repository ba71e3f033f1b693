import { inUnit, type UnitSystem } from "../core/index.ts";

/** A length to buy by, in whole metres or feet and never less than it is: "28,123 m". */
export function wholeLength(length_m: number, units: UnitSystem): string {
  const unit = units === "us" ? "ft" : "m";
  return `${Math.ceil(inUnit("length", length_m, unit) - 1e-6).toLocaleString("en-US")} ${unit}`;
}
