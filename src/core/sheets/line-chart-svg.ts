import type { Watered } from "../drip/watering-stage.ts";
import { pipeSizes } from "../hydraulics/pipe-sizes.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";
import type { AlongChart, AlongMark } from "./along-chart.ts";
import { alongSheet, alongSvg } from "./along-svg.ts";
import type { ChartOptions, ChartSheet, ChartWords } from "./chart-page.ts";
import { type LineChart, type LinePoint, lineChart } from "./line-chart.ts";

/**
 * Pressure and flow along main line and submain of a set (its index) as one SVG text, titled, told how to read; null where there is no such set.
 * `rowName` names the row at its end. Gives no findings.
 */
export function lineChartSvg(
  watered: Watered,
  set: number,
  rowName: (row: number) => string,
  options: ChartOptions,
): string | null {
  const chart = lineChart(watered, set);
  if (chart === null) return null;
  const title = `Set ${chart.set}, along the main line`;
  return alongSvg(alongOf(chart), title, wordsOf(chart, rowName(chart.row), options.units), options);
}

/** The same drawing without its words. */
export function lineChartSheet(
  watered: Watered,
  set: number,
  rowName: (row: number) => string,
  options: ChartOptions,
): ChartSheet | null {
  const chart = lineChart(watered, set);
  return chart === null ? null : alongSheet(alongOf(chart), wordsOf(chart, rowName(chart.row), options.units), options);
}

function alongOf({ points, needed_kpa }: LineChart): AlongChart {
  return {
    length_m: points.at(-1)?.at_m ?? 0,
    along: "along the pipe from the source",
    marks: pipeMarks(points),
    panels: [
      {
        kind: "pressure",
        name: "pressure in the pipe",
        points: points.map(({ at_m, pressure_kpa }) => ({ at_m, value: pressure_kpa })),
        isStepped: false,
        hasDots: false,
        rules: [{ value: needed_kpa, text: "needed at the last tee" }],
        from: null,
      },
      {
        kind: "flow",
        name: "flow in the pipe",
        points: points.map(({ at_m, flow_lph }) => ({ at_m, value: flow_lph })),
        isStepped: true,
        hasDots: false,
        rules: [],
        from: null,
      },
    ],
  };
}

/** Where each size of pipe begins. */
function pipeMarks(points: readonly LinePoint[]): readonly AlongMark[] {
  let before: string | null = null;
  return points.flatMap(({ pipe }, i): AlongMark[] => {
    if (pipe === null || pipe === before) return [];
    before = pipe;
    const name = pipeSizes.find(({ size }) => size === pipe)?.name ?? pipe;
    return [{ at_m: points[i - 1]?.at_m ?? 0, text: name }];
  });
}

function wordsOf({ set, points, needed_kpa }: LineChart, row: string, units: UnitSystem): ChartWords {
  const [first, last] = [points[0], points.at(-1)];
  const pressure = (value_kpa = 0) => formatQuantity("pressure", value_kpa, units);
  const lowest_kpa = points.reduce((low, { pressure_kpa }) => Math.min(low, pressure_kpa), Infinity);
  return {
    label:
      `Set ${set} takes ${formatQuantity("flow", first?.flow_lph ?? 0, units)}: ${pressure(first?.pressure_kpa)} where the main line begins, ` +
      `${pressure(last?.pressure_kpa)} at the tee of ${row}, which needs ${pressure(needed_kpa)} and has least to spare. ` +
      `The lowest on the way is ${pressure(lowest_kpa)}.`,
    reading: [
      "Upright lines: where a size of pipe begins. Broken line: what the last tee needs. Pressure rises where the line runs downhill.",
    ],
  };
}
