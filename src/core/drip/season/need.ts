/** Litres for one vine from mm over its ground: a mm on a square metre is a litre. */
export function net_l(depth_mm: number, rowSpacing_m: number, vineSpacing_m: number): number {
  return depth_mm * rowSpacing_m * vineSpacing_m;
}

/** What has to be let out for that to reach the driest quarter of vines and to wash salt out: net / EU / (1 - LR). */
export function gross(net: number, evenness_ratio: number, leaching_ratio: number): number {
  return net / evenness_ratio / (1 - leaching_ratio);
}

/** Flow that brings a volume in so many hours, L/s. */
export function flowFor_lps(volume_l: number, hours_h: number): number {
  return volume_l / hours_h / 3600;
}
