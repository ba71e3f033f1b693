import type { UnitSystem } from "../units.ts";
import { svgSheet, wrappedLines } from "./svg-sheet.ts";
import { escaped, svgTag } from "./svg-text.ts";

export interface ChartOptions {
  readonly units: UnitSystem;
  readonly width_px?: number;
}

/** A drawing with its words apart, for a page that writes them itself. */
export interface ChartSheet extends ChartWords {
  readonly svg: string;
}

export interface ChartWords {
  readonly label: string;
  readonly reading: readonly string[];
}

/** A chart drawn for some width, not yet put on a page. */
export interface DrawnChart {
  readonly width_px: number;
  readonly height_px: number;
  readonly style: string;
  /** SVG text of all that is in it. */
  readonly content: string;
}

export const usualWidth_px = 720;
const title_px = 26;
const line_px = 18;

/** The chart as one SVG text that needs nothing else, titled and told how to read. */
export function chartPage(title: string, { label, reading }: ChartWords, chart: DrawnChart): string {
  const { width_px: width, height_px, style, content } = chart;
  const lines = wrappedLines([label, ...reading], width - 24);
  const height = title_px + height_px + line_px * lines.length + 12;
  return svgSheet(
    "chart",
    { width, height, "aria-label": label },
    svgTag("title", {}, escaped(title)) +
      svgTag("desc", {}, escaped(label)) +
      svgTag("style", {}, style) +
      svgTag("rect", { class: "chart-paper", x: 0, y: 0, width, height }) +
      svgTag("text", { x: 12, y: 18, "font-weight": 700, "font-size": 15 }, escaped(title)) +
      svgTag("g", { transform: `translate(0 ${title_px})` }, content) +
      lines
        .map((line, i) => svgTag("text", { x: 12, y: title_px + height_px + line_px * (i + 0.8) }, escaped(line)))
        .join(""),
  );
}

/** The same drawing without its words. */
export function chartSheet(words: ChartWords, { width_px, height_px, style, content }: DrawnChart): ChartSheet {
  const svg = svgSheet(
    "chart",
    { width: width_px, height: height_px, "aria-label": words.label },
    svgTag("style", {}, style) + content,
  );
  return { svg, ...words };
}
