import type { Watered } from "../drip/watering-stage.ts";
import type { UnitSystem } from "../units.ts";
import { chartAxis } from "./chart-axis.ts";
import { chartStyle } from "./chart-style.ts";
import { type ChartPoint, type SupplyChart, type SupplyLine, supplyChart } from "./supply-chart.ts";
import { limitLines, setMarks } from "./supply-chart-marks.ts";
import { plot, type SupplyScale, top_px } from "./supply-chart-scale.ts";
import { supplyInWords, supplyReading } from "./supply-in-words.ts";
import { svgSheet, wrappedLines } from "./svg-sheet.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

export interface ChartOptions {
  readonly units: UnitSystem;
  readonly width_px?: number;
}

/** The chart as pieces for a page that writes the words itself. */
export interface SupplyChartSheet {
  readonly svg: string;
  readonly label: string;
  readonly reading: readonly string[];
}

const usualWidth_px = 720;
const title_px = 26;
const line_px = 18;
const content_px = top_px + plot.height + plot.under;

/**
 * What the water gives against what each set takes, as one SVG text that needs nothing else, titled, told how to read; null while the water
 * is not known. Lines are told apart by their strokes, sets by their numbers. Gives no findings.
 */
export function supplyChartSvg(watered: Watered, name: string, options: ChartOptions): string | null {
  const chart = supplyChart(watered);
  if (chart === null) return null;
  const { units, width_px = usualWidth_px } = options;
  const label = supplyInWords(chart, units);
  const lines = wrappedLines([label, ...supplyReading(chart, units)], width_px - 24);
  const height = title_px + content_px + line_px * lines.length + 12;
  const title = `${name}, water and sets`;
  return svgSheet(
    "chart",
    { width: width_px, height, "aria-label": label },
    svgTag("title", {}, escaped(title)) +
      svgTag("desc", {}, escaped(label)) +
      svgTag("style", {}, chartStyle) +
      svgTag("rect", { class: "chart-paper", x: 0, y: 0, width: width_px, height }) +
      svgTag("text", { x: 12, y: 18, "font-weight": 700, "font-size": 15 }, escaped(title)) +
      svgTag("g", { transform: `translate(0 ${title_px})` }, content(chart, units, width_px)) +
      lines
        .map((line, i) => svgTag("text", { x: 12, y: title_px + content_px + line_px * (i + 0.8) }, escaped(line)))
        .join(""),
  );
}

/** The same drawing without its words. */
export function supplyChartSheet(watered: Watered, options: ChartOptions): SupplyChartSheet | null {
  const chart = supplyChart(watered);
  if (chart === null) return null;
  const { units, width_px = usualWidth_px } = options;
  const label = supplyInWords(chart, units);
  return {
    svg: svgSheet(
      "chart",
      { width: width_px, height: content_px, "aria-label": label },
      svgTag("style", {}, chartStyle) + content(chart, units, width_px),
    ),
    label,
    reading: supplyReading(chart, units),
  };
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
