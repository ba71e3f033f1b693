import type { ChartAxis } from "./chart-axis.ts";

/** Where flows and pressures are on the chart of the supply, in pixels. */
export interface SupplyScale {
  readonly across: ChartAxis;
  readonly up: ChartAxis;
  readonly x: (flow_lph: number) => number;
  readonly y: (pressure_kpa: number) => number;
  readonly width: number;
}

export const plot = { left: 60, right: 18, height: 260, under: 42 } as const;
/** Lines for the sets' numbers over the plot. */
export const tagLines = 2;
export const tagLine_px = 20;
export const top_px = tagLines * tagLine_px + 10;
