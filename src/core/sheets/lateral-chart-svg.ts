import type { Watered } from "../drip/watering-stage.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";
import type { AlongChart } from "./along-chart.ts";
import { alongSheet, alongSvg } from "./along-svg.ts";
import type { ChartOptions, ChartSheet, ChartWords } from "./chart-page.ts";
import { type LateralChart, lateralChart } from "./lateral-chart.ts";

/**
 * Pressure and emitter flow along the hose of a row (its index in the plan) as one SVG text, titled, told how to read; null where there is nothing to
 * draw. Gives no findings.
 */
export function lateralChartSvg(watered: Watered, row: number, name: string, options: ChartOptions): string | null {
  const chart = lateralChart(watered, row);
  if (chart === null) return null;
  return alongSvg(alongOf(chart), `${name}, along the hose`, wordsOf(chart, name, options.units), options);
}

/** The same drawing without its words. */
export function lateralChartSheet(
  watered: Watered,
  row: number,
  name: string,
  options: ChartOptions,
): ChartSheet | null {
  const chart = lateralChart(watered, row);
  return chart === null ? null : alongSheet(alongOf(chart), wordsOf(chart, name, options.units), options);
}

/** Flows within this share of the nominal one leave the panel as wide as that. */
const span = 0.1;

function alongOf({ hose_m, emitters, nominal_lph, least_kpa }: LateralChart): AlongChart {
  return {
    length_m: hose_m,
    along: "along the hose from the end post at the water",
    marks: [],
    panels: [
      {
        kind: "pressure",
        name: "pressure at the emitters",
        points: emitters.map(({ at_m, pressure_kpa }) => ({ at_m, value: pressure_kpa })),
        isStepped: false,
        hasDots: false,
        rules: least_kpa === null ? [] : [{ value: least_kpa, text: "least of their range" }],
        from: null,
      },
      {
        kind: "flow",
        name: "flow of each emitter",
        points: emitters.map(({ at_m, flow_lph }) => ({ at_m, value: flow_lph })),
        isStepped: false,
        hasDots: true,
        rules: [{ value: nominal_lph, text: "nominal" }],
        from: nominal_lph * (1 - span),
      },
    ],
  };
}

function wordsOf(chart: LateralChart, name: string, units: UnitSystem): ChartWords {
  const { emitters, set, flow_lph, nominal_lph, least_kpa } = chart;
  const [first, last] = [emitters[0], emitters.at(-1)];
  const pressure = (value_kpa = 0) => formatQuantity("pressure", value_kpa, units);
  const flow = (value_lph: number) => formatQuantity("flow", value_lph, units);
  const flows = emitters.map((each) => each.flow_lph);
  const [lowest, highest] = [Math.min(...flows), Math.max(...flows)];
  const while_ = set === null ? "by itself, as it needs" : `while set ${set} runs with the filter due for cleaning`;
  return {
    label:
      `${name} ${while_}: ${pressure(first?.pressure_kpa)} at its first emitter, ${pressure(last?.pressure_kpa)} at its last. ` +
      `Its emitters give ${flow(lowest)} to ${flow(highest)}, nominal ${flow(nominal_lph)}, and the row takes ${flow(flow_lph)}.`,
    reading: [
      "Above: pressure, from nothing on. Below: each dot an emitter; the scale of flows does not begin at nothing. Broken lines: the nominal flow",
      least_kpa === null ? "of one." : "of one, and the least pressure at which it is held.",
    ],
  };
}
