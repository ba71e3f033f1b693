import type { UnitSystem } from "../units.ts";
import type { AlongChart, AlongMark, AlongPanel, AlongPoint } from "./along-chart.ts";
import { type ChartAxis, chartAxis } from "./chart-axis.ts";
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
import { placedLabels } from "./placed-labels.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

const plot = { left: 60, right: 18, height: 150, between: 30, under: 42 } as const;
/** Lines for the names of places over the upper panel. */
const markLines = 2;
const markLine_px = 18;
const letter_px = 7.4;
/** More points than these are a line without dots. */
const mostDots = 150;

/** A chart along a hose or a pipe as one SVG text that needs nothing else, titled and told how to read. */
export function alongSvg(chart: AlongChart, title: string, words: ChartWords, options: ChartOptions): string {
  return chartPage(title, words, placed(chart, options));
}

/** The same drawing without its words. */
export function alongSheet(chart: AlongChart, words: ChartWords, options: ChartOptions): ChartSheet {
  return chartSheet(words, placed(chart, options));
}

function placed(chart: AlongChart, { units, width_px = usualWidth_px }: ChartOptions): DrawnChart {
  const height_px = contentHeight_px(chart);
  return { width_px, height_px, style: chartStyle, content: drawn(chart, units, width_px) };
}

function top_px({ marks }: AlongChart): number {
  return (marks.length === 0 ? 0 : markLines * markLine_px) + 24;
}

function contentHeight_px(chart: AlongChart): number {
  return top_px(chart) + chart.panels.length * plot.height + (chart.panels.length - 1) * plot.between + plot.under;
}

/** A distance in pixels, and a value of a panel. */
interface Scale {
  readonly x: (at_m: number) => number;
  readonly y: (value: number) => number;
  readonly top: number;
  readonly foot: number;
  readonly right: number;
}

function drawn(chart: AlongChart, units: UnitSystem, width_px: number): string {
  const inside = width_px - plot.left - plot.right;
  const across = chartAxis("length", 0, Math.max(chart.length_m, 0.1), units, Math.max(3, Math.floor(inside / 90)));
  const x = (at_m: number): number => plot.left + (inside * at_m) / across.to;
  const right = width_px - plot.right;
  const first = top_px(chart);
  const panels = chart.panels.map((panel, i) => {
    const top = first + i * (plot.height + plot.between);
    const up = upAxis(panel, units);
    const foot = top + plot.height;
    const y = (value: number): number => foot - (plot.height * (value - up.from)) / (up.to - up.from);
    return panelText(panel, { x, y, top, foot, right }, across, up);
  });
  const last = first + chart.panels.length * plot.height + (chart.panels.length - 1) * plot.between;
  return (
    marksText(chart.marks, x, first, last, right) +
    panels.join("") +
    across.ticks
      .map(({ value, text }) => svgTag("text", { x: x(value), y: last + 16, "text-anchor": "middle" }, text))
      .join("") +
    svgTag("text", { x: right, y: last + 34, "text-anchor": "end" }, escaped(`${chart.along}, ${across.unit}`))
  );
}

function upAxis({ kind, points, rules, from }: AlongPanel, units: UnitSystem): ChartAxis {
  const values = [...points.map(({ value }) => value), ...rules.map(({ value }) => value)];
  const most = values.reduce((high, each) => Math.max(high, each), -Infinity);
  const least = values.reduce((low, each) => Math.min(low, each), from ?? 0);
  return chartAxis(kind, least, Math.max(most, least + 1e-3), units, 5);
}

function panelText(panel: AlongPanel, scale: Scale, across: ChartAxis, up: ChartAxis): string {
  const { x, y, top, foot, right } = scale;
  const grid = [
    ...across.ticks.map(({ value }) => `M${px(x(value))} ${px(foot)}V${px(top)}`),
    ...up.ticks.map(({ value }) => `M${px(plot.left)} ${px(y(value))}H${px(right)}`),
  ];
  const dots =
    panel.hasDots && panel.points.length <= mostDots
      ? panel.points.map(({ at_m, value }) =>
          svgTag("circle", { class: "chart-dot", cx: x(at_m), cy: y(value), r: 2.6 }),
        )
      : [];
  const mean = panel.points.reduce((sum, { value }) => sum + value, 0) / panel.points.length;
  const rules = panel.rules.map(({ value, text }) => {
    // Its name stands on the side of the line where nothing is drawn.
    const beside = mean > value ? y(value) + 14 : y(value) - 4;
    return (
      svgTag("path", { class: "chart-counted", d: `M${px(plot.left)} ${px(y(value))}H${px(right)}` }) +
      svgTag("text", { class: "chart-halo", x: right - 4, y: beside, "text-anchor": "end" }, escaped(text))
    );
  });
  return [
    svgTag("path", { class: "chart-grid", d: grid.join("") }),
    ...up.ticks.map(({ value, text }) =>
      svgTag("text", { x: plot.left - 8, y: y(value) + 4, "text-anchor": "end" }, text),
    ),
    svgTag("text", { x: plot.left, y: top - 8 }, escaped(`${panel.name}, ${up.unit}`)),
    svgTag("path", { class: "chart-line", d: pathOf(panel, scale) }),
    ...rules,
    ...dots,
  ].join("");
}

function pathOf({ points, isStepped }: AlongPanel, { x, y }: Scale): string {
  return points
    .map((point: AlongPoint, i) => {
      if (i === 0) return `M${px(x(point.at_m))} ${px(y(point.value))}`;
      const level = isStepped ? `V${px(y(point.value))}H${px(x(point.at_m))}` : null;
      return level ?? `L${px(x(point.at_m))} ${px(y(point.value))}`;
    })
    .join("");
}

function marksText(
  marks: readonly AlongMark[],
  x: (at_m: number) => number,
  top: number,
  foot: number,
  right: number,
): string {
  const labels = marks.map(({ at_m, text }) => {
    return { x: x(at_m) + (text.length * letter_px) / 2, dot: x(at_m), text };
  });
  const placed = placedLabels(labels, markLines, letter_px, right);
  return (
    labels.map(({ dot }) => svgTag("path", { class: "chart-lead", d: `M${px(dot)} ${px(top)}V${px(foot)}` })).join("") +
    placed
      .map((place) =>
        svgTag(
          "text",
          { class: "chart-halo", x: place.x, y: top - 26 - place.line * markLine_px, "text-anchor": "middle" },
          escaped(place.text),
        ),
      )
      .join("")
  );
}
