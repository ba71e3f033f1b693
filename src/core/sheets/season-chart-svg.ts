import { momentInWords, monthNames } from "../drip/season/months.ts";
import type { SeasonMonth } from "../drip/watering.ts";
import type { Watered } from "../drip/watering-stage.ts";
import { inUnit, type UnitSystem } from "../units.ts";
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
import { placedLabels } from "./placed-labels.ts";
import { type SeasonChart, seasonChart } from "./season-chart.ts";
import { seasonInWords, seasonReading } from "./season-in-words.ts";
import { seasonStyle } from "./season-style.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

const plot = { right: 14, top: 14, height: 220 } as const;
/** Room for the heads of the numbers under the bars, or for the axis alone. */
const left_px = (width_px: number) => (width_px < leastWithNumbers_px ? 58 : 92);
/** Narrower than this the numbers under the bars have no room. */
const leastWithNumbers_px = 620;
const numbersLine_px = 19;
const letter_px = 6.6;

/**
 * Water of a block (null: the first) through the year as bars, as one SVG text that needs nothing else, titled, told how to read; null while the
 * season is not known. Outlined at peak, filled usually, rings for young vines: it reads without colour. Gives no findings.
 */
export function seasonChartSvg(
  watered: Watered,
  block: string | null,
  name: string,
  options: ChartOptions,
): string | null {
  const chart = seasonChart(watered, block);
  if (chart === null) return null;
  const title = `${name}, water of ${chart.block} through the year`;
  return chartPage(title, wordsOf(chart, options.units), drawn(chart, options));
}

/** The same drawing without its words. */
export function seasonChartSheet(watered: Watered, block: string | null, options: ChartOptions): ChartSheet | null {
  const chart = seasonChart(watered, block);
  return chart === null ? null : chartSheet(wordsOf(chart, options.units), drawn(chart, options));
}

function wordsOf(chart: SeasonChart, units: UnitSystem): ChartWords {
  return { label: seasonInWords(chart, units), reading: seasonReading(chart, units) };
}

function drawn(chart: SeasonChart, { units, width_px = usualWidth_px }: ChartOptions): DrawnChart {
  const height_px = contentHeight_px(width_px);
  return { width_px, height_px, style: seasonStyle, content: content(chart, units, width_px) };
}

interface Row {
  readonly head: string;
  readonly value: (month: SeasonMonth) => number;
}

const rows: readonly Row[] = [
  { head: "usual", value: ({ usual_lpw }) => usual_lpw },
  { head: "at peak", value: ({ peak_lpw }) => peak_lpw },
  { head: "young", value: ({ young_lpw }) => young_lpw },
  { head: "usual, h/day", value: ({ usualAll_h }) => usualAll_h },
  { head: "peak, h/day", value: ({ all_h }) => all_h },
];

function contentHeight_px(width_px: number): number {
  const numbers = width_px < leastWithNumbers_px ? 0 : rows.length * numbersLine_px + 4;
  return plot.top + plot.height + 50 + numbers;
}

interface Scale {
  readonly up: ChartAxis;
  readonly left: number;
  /** Left edge of a month, 1 to 13 with parts. */
  readonly x: (month: number) => number;
  readonly y: (week_l: number) => number;
  readonly foot: number;
  readonly width: number;
}

function content(chart: SeasonChart, units: UnitSystem, width_px: number): string {
  const up = chartAxis("volume", 0, Math.max(chart.most_lpw, 1e-3), units, 5);
  const foot = plot.top + plot.height;
  const scale: Scale = {
    up,
    left: left_px(width_px),
    x: (month) => left_px(width_px) + ((width_px - left_px(width_px) - plot.right) * (month - 1)) / 12,
    y: (week_l) => foot - (plot.height * week_l) / up.to,
    foot,
    width: width_px,
  };
  return [
    grid(scale),
    ...chart.months.map((month) => bars(month, scale)),
    bound(chart, scale),
    first(chart, scale),
    numbers(chart, scale),
  ].join("");
}

function grid({ up, left, x, y, foot, width }: Scale): string {
  const letters = x(2) - x(1) < 30 ? 1 : 3;
  const middle = (foot + y(up.to)) / 2;
  return (
    svgTag("path", {
      class: "chart-grid",
      d: up.ticks.map(({ value }) => `M${px(left)} ${px(y(value))}H${px(width - plot.right)}`).join(""),
    }) +
    up.ticks
      .map(({ value, text }) => svgTag("text", { x: left - 8, y: y(value) + 4, "text-anchor": "end" }, text))
      .join("") +
    monthNames
      .map((name, i) =>
        svgTag("text", { x: x(i + 1.5), y: foot + 16, "text-anchor": "middle" }, name.slice(0, letters)),
      )
      .join("") +
    svgTag(
      "text",
      { x: 14, y: middle, "text-anchor": "middle", transform: `rotate(-90 14 ${px(middle)})` },
      escaped(`a vine a week, ${up.unit}`),
    )
  );
}

/** At peak as an outline, usual as a narrower bar in it, young vines as a ring. */
function bars({ month, usual_lpw, peak_lpw, young_lpw }: SeasonMonth, { x, y, foot }: Scale): string {
  const wide = x(2) - x(1);
  const bar = (name: string, value: number, share: number) =>
    value <= 0
      ? ""
      : svgTag("rect", {
          class: name,
          x: x(month) + (wide * (1 - share)) / 2,
          y: y(value),
          width: wide * share,
          height: foot - y(value),
        });
  return (
    bar("season-peak", peak_lpw, 0.72) +
    bar("season-usual", usual_lpw, 0.44) +
    (young_lpw > 0 ? svgTag("circle", { class: "season-young", cx: x(month + 0.5), cy: y(young_lpw), r: 3.6 }) : "")
  );
}

/** What the hours a day bring, where it lies within the drawing. */
function bound({ bound_lpw, most_lpw, hours_h }: SeasonChart, { x, y }: Scale): string {
  if (bound_lpw === null || bound_lpw > most_lpw) return "";
  const at = y(bound_lpw);
  const hours = `${String(Math.round(hours_h * 10) / 10)} h a day`;
  return (
    svgTag("path", { class: "chart-counted", d: `M${px(x(1))} ${px(at)}H${px(x(13))}` }) +
    svgTag(
      "text",
      { class: "chart-halo", x: x(1) + 6, y: at - 5 },
      escaped(x(2) - x(1) < 40 ? hours : `${hours}, all sets in turn`),
    )
  );
}

/** A wedge where the soil's store is used up. */
function first({ firstWatering }: SeasonChart, { x, foot, width }: Scale): string {
  if (firstWatering === null) return "";
  const at = x(firstWatering);
  const text = `first watering about ${momentInWords(firstWatering)}`;
  const [room] = placedLabels([{ x: at, text }], 1, letter_px, width);
  return (
    svgTag("path", { class: "season-first", d: `M${px(at)} ${px(foot + 20)}l-4 7h8z` }) +
    svgTag("text", { x: room?.x ?? at, y: foot + 40, "text-anchor": "middle" }, escaped(text))
  );
}

function numbers({ months }: SeasonChart, { up, left, x, foot, width }: Scale): string {
  if (width < leastWithNumbers_px) return "";
  const volume = (value_l: number) => inUnit("volume", value_l, up.unit.replace("³", "3")).toFixed(1);
  return rows
    .map(({ head, value }, row) => {
      const y = foot + 50 + numbersLine_px * (row + 0.7);
      const isHours = head.endsWith("h/day");
      return (
        svgTag("text", { x: left - 8, y, "text-anchor": "end" }, escaped(head)) +
        months
          .map((month) => {
            const number = value(month);
            const text = number <= 0 ? "–" : isHours ? number.toFixed(1) : volume(number);
            return svgTag("text", { x: x(month.month + 0.5), y, "text-anchor": "middle" }, text);
          })
          .join("")
      );
    })
    .join("");
}
