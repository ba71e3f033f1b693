/**
 * Kinds of quantity and the SI unit a bare number of that kind is in:
 * length m · area m2 · diameter mm · angle deg · flow L/h (emitters) · volume L · mass kg · ratio 1 (shown as %) · pressure kPa · time h ·
 * force N · temperature °C · earth m3 (earth, sand and concrete by volume) · speed m/s · depth mm (of water on the ground, rain).
 */
export type QuantityKind =
  | "length"
  | "area"
  | "diameter"
  | "angle"
  | "flow"
  | "volume"
  | "mass"
  | "ratio"
  | "pressure"
  | "time"
  | "force"
  | "temperature"
  | "earth"
  | "speed"
  | "depth";

/** Metric with pressures in kPa; US customary; metric with pressures in bar, or in metres of water. */
export const unitSystems = ["metric", "us", "metric-bar", "metric-head"] as const;
export type UnitSystem = (typeof unitSystems)[number];
