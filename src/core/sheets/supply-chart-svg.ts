import type { Watered } from "../drip/watering-stage.ts";
import type { UnitSystem } from "../units.ts";
import { chartAxis } from "./chart-axis.ts";
import {
  type ChartOptions,
  type ChartSheet,
  type ChartWords,
  chartPage,
  chartSheet,
  type DrawnChart,
  usualWidth_px,
} from "./chart-page.ts";
import { chartStyle } from "./chart-style.ts";
import { type ChartPoint, type SupplyChart, type SupplyLine, supplyChart } from "./supply-chart.ts";
import { limitLines, setMarks } from "./supply-chart-marks.ts";
import { plot, type SupplyScale, top_px } from "./supply-chart-scale.ts";
import { supplyInWords, supplyReading } from "./supply-in-words.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

const content_px = top_px + plot.height + plot.under;

/**
 * What the water gives against what each set takes, as one SVG text that needs nothing else, titled, told how to read; null while the water
 * is not known. Lines are told apart by their strokes, sets by their numbers. Gives no findings.
 */
export function supplyChartSvg(watered: Watered, name: string, options: ChartOptions): string | null {
  const chart = supplyChart(watered);
  if (chart === null) return null;
  return chartPage(`${name}, water and sets`, wordsOf(chart, options.units), drawn(chart, options));
}

/** The same drawing without its words. */
export function supplyChartSheet(watered: Watered, options: ChartOptions): ChartSheet | null {
  const chart = supplyChart(watered);
  return chart === null ? null : chartSheet(wordsOf(chart, options.units), drawn(chart, options));
}

function wordsOf(chart: SupplyChart, units: UnitSystem): ChartWords {
  return { label: supplyInWords(chart, units), reading: supplyReading(chart, units) };
}

function drawn(chart: SupplyChart, { units, width_px = usualWidth_px }: ChartOptions): DrawnChart {
  return { width_px, height_px: content_px, style: chartStyle, content: content(chart, units, width_px) };
}

function content(chart: SupplyChart, units: UnitSystem, width_px: number): string {
  const inside = width_px - plot.left - plot.right;
  const across = chartAxis("flow", 0, chart.widest_lph, units, Math.max(3, Math.floor(inside / 90)));
  const up = chartAxis("pressure", 0, chart.highest_kpa * 1.05, units, 6);
  const foot = top_px + plot.height;
  const scale: SupplyScale = {
    across,
    up,
    x: (flow_lph) => plot.left + (inside * flow_lph) / across.to,
    y: (pressure_kpa) => foot - (plot.height * pressure_kpa) / up.to,
    width: width_px,
  };
  return [
    grid(scale),
    limitLines(chart, scale),
    ...demands(chart, scale),
    ...curves(chart, scale),
    setMarks(chart, scale),
  ].join("");
}

function grid({ across, up, x, y, width }: SupplyScale): string {
  const foot = y(0);
  const lines = [
    ...across.ticks.map(({ value }) => `M${px(x(value))} ${px(foot)}V${px(y(up.to))}`),
    ...up.ticks.map(({ value }) => `M${px(plot.left)} ${px(y(value))}H${px(width - plot.right)}`),
  ];
  return (
    svgTag("path", { class: "chart-grid", d: lines.join("") }) +
    across.ticks
      .map(({ value, text }) => svgTag("text", { x: x(value), y: foot + 16, "text-anchor": "middle" }, text))
      .join("") +
    up.ticks
      .map(({ value, text }) => svgTag("text", { x: plot.left - 8, y: y(value) + 4, "text-anchor": "end" }, text))
      .join("") +
    svgTag(
      "text",
      { x: width - plot.right, y: foot + 34, "text-anchor": "end" },
      escaped(`flow to the field, ${across.unit}`),
    ) +
    svgTag(
      "text",
      {
        x: 14,
        y: (foot + y(up.to)) / 2,
        "text-anchor": "middle",
        transform: `rotate(-90 14 ${px((foot + y(up.to)) / 2)})`,
      },
      escaped(`pressure, ${up.unit}`),
    )
  );
}

const names: Readonly<Record<SupplyLine, string>> = {
  gauge: "at the gauge",
  clean: "filter clean",
  dirty: "filter due for cleaning",
};

/** The supply lines, and their names at their left ends, the lowest first, as long as no other name stands there. */
function curves({ curves: all }: SupplyChart, { x, y }: SupplyScale): readonly string[] {
  const taken: number[] = [];
  const named = [...all].reverse().map(({ of, points: [first] }) => {
    const at = y(first?.pressure_kpa ?? 0) + 16;
    if (first === undefined || taken.some((other) => Math.abs(other - at) < 14)) return "";
    taken.push(at);
    return svgTag("text", { class: "chart-halo", x: plot.left + 8, y: at }, names[of]);
  });
  return [
    ...named,
    ...all.map(({ of, points }) => svgTag("path", { class: `chart-line is-${of}`, d: pathOf(points, x, y) })),
  ];
}

function demands({ sets }: SupplyChart, { x, y, across, up }: SupplyScale): readonly string[] {
  return sets.map(({ demand }) => {
    const shown = demand.filter(
      (point) => point.flow_lph <= across.to && point.pressure_kpa <= up.to && point.pressure_kpa >= 0,
    );
    return shown.length < 2 ? "" : svgTag("path", { class: "chart-demand", d: pathOf(shown, x, y) });
  });
}

function pathOf(points: readonly ChartPoint[], x: SupplyScale["x"], y: SupplyScale["y"]): string {
  return points
    .map((point, i) => `${i === 0 ? "M" : "L"}${px(x(point.flow_lph))} ${px(y(point.pressure_kpa))}`)
    .join("");
}
