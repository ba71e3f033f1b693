import type { Plan } from "../plan.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";
import { type RowSide, rowSide } from "./row-side.ts";
import { sideInWords, sideReading } from "./side-in-words.ts";
import { type SideScale, type SideZoom, sideScale } from "./side-scale.ts";
import { sideStyle } from "./side-style.ts";
import { sideThings } from "./side-things.ts";
import { heightsWidth_px, sideHeights, sideWritten } from "./side-written.ts";
import { svgSheet, wrappedLines } from "./svg-sheet.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

export interface SideSvgOptions {
  readonly units: UnitSystem;
  /** Of the whole drawing, heights included, when the whole row is shown. */
  readonly width_px?: number;
  readonly zoom?: SideZoom;
}

/** A row's side as pieces for a page where the heights stay in view while the row is scrolled. */
export interface SideSheet {
  readonly heights: string;
  readonly row: string;
  /** What is drawn, for those who do not see it, and how to read it. */
  readonly label: string;
  readonly reading: readonly string[];
}

const usualWidth_px = 1100;
/** Goes wherever the drawing goes on its own. */
const caution =
  "A planning aid, not engineering design: size anchors and posts by your soil, local code and practice; wire under tension can whip.";
/** Room under the drawing for its title and how to read it. */
const title_px = 26;
const line_px = 18;

/**
 * The side of one row as one SVG text that needs nothing else: drawn to scale with wires, posts, ends, vines and distances, titled, told how
 * to read. null when there is no such row. Gives no findings.
 */
export function rowSideSvg(plan: Plan, row: string, options: SideSvgOptions): string | null {
  const side = rowSide(plan, row);
  if (side === null) return null;
  const { units, width_px = usualWidth_px, zoom = "whole" } = options;
  const scale = sideScale(side, zoom, width_px - heightsWidth_px);
  const label = sideInWords(side, units);
  const lines = wrappedLines(
    [label, ...sideReading(side, scale.raised, units), caution],
    Math.min(heightsWidth_px + scale.width, usualWidth_px) - 24,
  );
  const [width, height] = [heightsWidth_px + scale.width, title_px + scale.height + line_px * lines.length + 12];
  const title = `${plan.project.name}, row ${side.row}`;
  const told = lines.map((line, i) =>
    svgTag("text", { x: 12, y: title_px + scale.height + line_px * (i + 0.8) }, escaped(line)),
  );
  return svgSheet(
    "row-side",
    { width, height, "aria-label": label },
    svgTag("title", {}, escaped(title)) +
      svgTag("desc", {}, escaped(label)) +
      svgTag("style", {}, sideStyle) +
      svgTag("rect", { class: "side-paper", x: 0, y: 0, width, height }) +
      svgTag("text", { x: 12, y: 18, "font-weight": 700, "font-size": 15 }, escaped(title)) +
      svgTag("g", { transform: `translate(0 ${title_px})` }, sideHeights(side, scale, units)) +
      svgTag("g", { transform: `translate(${heightsWidth_px} ${title_px})` }, rowContent(side, scale, units)) +
      told.join(""),
  );
}

/** The same drawing in two pieces, the wires' heights and the row, for a page that tells the rest itself. */
export function rowSideSheet(
  side: RowSide,
  { units, width_px = usualWidth_px, zoom = "whole" }: SideSvgOptions,
): SideSheet {
  const scale = sideScale(side, zoom, width_px - heightsWidth_px);
  const label = sideInWords(side, units);
  const { width, height } = scale;
  return {
    heights: svgSheet(
      "row-side",
      { width: heightsWidth_px, height, "aria-hidden": "true" },
      svgTag("style", {}, sideStyle) + sideHeights(side, scale, units),
    ),
    row: svgSheet(
      "row-side",
      { width, height, "aria-label": label },
      svgTag("style", {}, sideStyle) + rowContent(side, scale, units),
    ),
    label,
    reading: sideReading(side, scale.raised, units),
  };
}

function rowContent(side: RowSide, scale: SideScale, units: UnitSystem): string {
  return sideThings(side, scale) + sideWritten(side, scale, units) + scaleBar(scale, units);
}

/** A length drawn to scale, which still holds when the drawing is printed smaller. */
function scaleBar({ x, height }: SideScale, units: UnitSystem): string {
  const lengths_m = units === "us" ? [1, 5, 10, 50, 100].map((feet) => feet * 0.3048) : [0.5, 1, 5, 10, 20, 50];
  const length_m = lengths_m.find((each) => x(each) - x(0) >= 40);
  if (length_m === undefined) return "";
  const [from, width, y] = [20, x(length_m) - x(0), height - 7];
  return svgTag(
    "g",
    { class: "side-scale" },
    svgTag("path", { d: `M${from} ${px(y - 5)}v5h${px(width)}v-5` }) +
      svgTag("text", { x: from + width + 8, y: y + 2 }, escaped(formatQuantity("length", length_m, units))),
  );
}
