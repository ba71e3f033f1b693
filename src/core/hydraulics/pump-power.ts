import { pressureOf_kpa } from "./pressure-head.ts";

/** Power a pump takes, W: density times gravity times flow times head over efficiency. 5 L/s, 40 m, 0.65: 3017.431 W (calculation handbook, check 4-39). */
export function pumpPower_w(flow_lps: number, head_m: number, efficiency_ratio: number): number {
  return (flow_lps * pressureOf_kpa(head_m)) / efficiency_ratio;
}

/** Energy a pump takes for a cubic metre, kWh. */
export function pumpEnergy_kwhpm3(head_m: number, efficiency_ratio: number): number {
  return pressureOf_kpa(head_m) / 3600 / efficiency_ratio;
}
