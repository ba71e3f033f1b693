import type { Watered } from "../drip/watering-stage.ts";
import type { UnitSystem } from "../units.ts";
import { type ChartAxis, chartAxis } from "./chart-axis.ts";
import { chartStyle } from "./chart-style.ts";
import { placedLabels } from "./placed-labels.ts";
import { type ChartPoint, type SupplyChart, type SupplyLine, supplyChart } from "./supply-chart.ts";
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
const plot = { left: 60, right: 18, height: 260, under: 42 } as const;
/** Lines for the sets' numbers over the plot. */
const tagLines = 3;
const tagLine_px = 20;
const top_px = tagLines * tagLine_px + 10;
const content_px = top_px + plot.height + plot.under;
const letter_px = 7.4;
/** Sets that run within so many pixels share a number plate. */
const beside_px = 9;

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

interface Scale {
  readonly across: ChartAxis;
  readonly up: ChartAxis;
  readonly x: (flow_lph: number) => number;
  readonly y: (pressure_kpa: number) => number;
  readonly width: number;
}

function content(chart: SupplyChart, units: UnitSystem, width_px: number): string {
  const inside = width_px - plot.left - plot.right;
  const across = chartAxis("flow", 0, chart.widest_lph, units, Math.max(3, Math.floor(inside / 90)));
  const up = chartAxis("pressure", 0, chart.highest_kpa * 1.05, units, 6);
  const foot = top_px + plot.height;
  const scale: Scale = {
    across,
    up,
    x: (flow_lph) => plot.left + (inside * flow_lph) / across.to,
    y: (pressure_kpa) => foot - (plot.height * pressure_kpa) / up.to,
    width: width_px,
  };
  return [
    grid(scale),
    limits(chart, scale),
    ...demands(chart, scale),
    ...curves(chart, scale),
    tags(chart, scale),
  ].join("");
}

function grid({ across, up, x, y, width }: Scale): string {
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

/** Upright lines at what is counted on, at the most, and at the least that a pump holds. */
function limits({ most_lph, counted_lph, least_lph, margin_ratio }: SupplyChart, scale: Scale): string {
  const upright = (flow_lph: number, text: string, name: string) => {
    const [at, foot] = [scale.x(flow_lph), scale.y(0)];
    return (
      svgTag("path", { class: name, d: `M${px(at)} ${px(foot)}V${px(scale.y(scale.up.to))}` }) +
      svgTag(
        "text",
        { class: "chart-halo", x: at - 5, y: foot - 8, transform: `rotate(-90 ${px(at - 5)} ${px(foot - 8)})` },
        escaped(text),
      )
    );
  };
  return [
    most_lph === null ? "" : upright(most_lph, "most", "chart-limit"),
    counted_lph === null || margin_ratio === 0 ? "" : upright(counted_lph, "counted on", "chart-counted"),
    least_lph === 0 ? "" : upright(least_lph, "least the pump holds", "chart-counted"),
  ].join("");
}

const names: Readonly<Record<SupplyLine, string>> = {
  gauge: "at the gauge",
  clean: "filter clean",
  dirty: "filter due for cleaning",
};

/** The supply lines, and their names at their left ends, the lowest first, as long as no other name stands there. */
function curves({ curves: all }: SupplyChart, { x, y }: Scale): readonly string[] {
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

function demands({ sets }: SupplyChart, { x, y, across, up }: Scale): readonly string[] {
  return sets.map(({ demand }) => {
    const shown = demand.filter(
      (point) => point.flow_lph <= across.to && point.pressure_kpa <= up.to && point.pressure_kpa >= 0,
    );
    return shown.length < 2 ? "" : svgTag("path", { class: "chart-demand", d: pathOf(shown, x, y) });
  });
}

function pathOf(points: readonly ChartPoint[], x: Scale["x"], y: Scale["y"]): string {
  return points
    .map((point, i) => `${i === 0 ? "M" : "L"}${px(x(point.flow_lph))} ${px(y(point.pressure_kpa))}`)
    .join("");
}

/** A dot where each set runs, and its number over the plot; sets that run at the same place share one. */
function tags({ sets }: SupplyChart, { x, y, width }: Scale): string {
  const places: { readonly at: ChartPoint; readonly x: number; readonly y: number; readonly names: string[] }[] = [];
  for (const { name, at } of sets) {
    const [own, high] = [x(at.flow_lph), y(at.pressure_kpa)];
    const near = places.find((place) => Math.abs(place.x - own) < beside_px && Math.abs(place.y - high) < beside_px);
    if (near === undefined) places.push({ at, x: own, y: high, names: [name] });
    else near.names.push(name);
  }
  const labels = places.map((place) => ({ ...place, dot: place.x, text: sharedNames(place.names) }));
  const placed = placedLabels(labels, tagLines, letter_px, width - plot.right);
  const dots = sets.map(({ at, isShort }) =>
    svgTag("circle", {
      class: isShort ? "chart-dot is-short" : "chart-dot",
      cx: x(at.flow_lph),
      cy: y(at.pressure_kpa),
      r: 4,
    }),
  );
  const plates = placed.map((place) => {
    const foot = top_px - 8 - place.line * tagLine_px;
    return (
      svgTag("path", {
        class: "chart-lead",
        d: `M${px(place.x)} ${px(foot + 4)}L${px(place.dot)} ${px(place.y - 5)}`,
      }) +
      svgTag(
        "text",
        { class: "chart-halo", x: place.x, y: foot, "text-anchor": "middle", "font-weight": 700 },
        escaped(place.text),
      )
    );
  });
  return plates.join("") + dots.join("");
}

/** "set 3", "sets 1, 2, 5", "sets 1 to 7" */
function sharedNames(all: readonly string[]): string {
  const [first = ""] = all;
  if (all.length === 1) return `set ${first}`;
  const isRun = all.every((name, i) => Number(name) === Number(first) + i);
  if (isRun && all.length > 2) return `sets ${first} to ${all.at(-1)}`;
  return `sets ${all.length > 6 ? `${all.slice(0, 5).join(", ")} and ${all.length - 5} more` : all.join(", ")}`;
}
