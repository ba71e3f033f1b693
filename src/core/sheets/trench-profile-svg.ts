import type { Plan } from "../plan.ts";
import { branchInWords } from "../trench/mark-in-words.ts";
import { formatQuantity, type UnitSystem } from "../units.ts";
import { svgSheet, wrappedLines } from "./svg-sheet.ts";
import { escaped, px, svgTag } from "./svg-text.ts";
import {
  columnsHeight_px,
  headsWidth_px,
  type TrenchColumns,
  trenchColumnHeads,
  trenchColumns,
  writtenStations,
} from "./trench-columns.ts";
import { trenchGround } from "./trench-ground.ts";
import { heightLines, heightNumbers } from "./trench-heights.ts";
import { trenchCaution, trenchInWords, trenchReading } from "./trench-in-words.ts";
import { trenchMet } from "./trench-met.ts";
import { type TrenchProfile, trenchProfile } from "./trench-profile.ts";
import { type TrenchRaise, type TrenchScale, type TrenchZoom, trenchScale } from "./trench-scale.ts";
import { trenchStyle } from "./trench-style.ts";

export interface TrenchSvgOptions {
  readonly units: UnitSystem;
  /** Of the whole drawing, heights included, when the whole branch is shown. */
  readonly width_px?: number;
  readonly zoom?: TrenchZoom;
  /** How many times heights are drawn larger than lengths; null: as large as fits. */
  readonly raised?: TrenchRaise | null;
}

/** A branch's profile as pieces for a page where the heights stay in view while it is scrolled. */
export interface TrenchSheet {
  readonly heights: string;
  readonly branch: string;
  /** What is drawn, for those who do not see it, and how to read it. */
  readonly label: string;
  readonly reading: readonly string[];
  readonly scale: TrenchScale;
}

const usualWidth_px = 1100;
const title_px = 26;
const line_px = 18;
/** Room for the scale bar under the numbers. */
const bar_px = 26;

/**
 * The profile of a branch (null: the first) as one SVG text that needs nothing else: ground, pipe, bottom and what is met, with the numbers to
 * dig by, titled, told how to read. null when there is no such branch. Gives no findings.
 */
export function trenchProfileSvg(plan: Plan, branch: string | null, options: TrenchSvgOptions): string | null {
  const profile = trenchProfile(plan, branch);
  if (profile === null) return null;
  const { units, width_px = usualWidth_px, zoom = "whole", raised = null } = options;
  const scale = trenchScale(profile, zoom, raised, width_px - headsWidth_px);
  const label = trenchInWords(profile, units);
  const { every } = writtenStations(profile, scale);
  const lines = wrappedLines(
    [label, ...trenchReading(profile, scale, zoom, every, units), trenchCaution(units)],
    Math.min(headsWidth_px + scale.width, usualWidth_px) - 24,
  );
  const height_px = contentHeight_px("all", profile, scale);
  // A short branch leaves its words and title the room of a page.
  const width = Math.max(headsWidth_px + scale.width, Math.min(usualWidth_px, width_px));
  const height = title_px + height_px + line_px * lines.length + 12;
  const title = `${plan.project.name}, trench of ${branchInWords(profile.branch)}`;
  const told = lines.map((line, i) =>
    svgTag("text", { x: 12, y: title_px + height_px + line_px * (i + 0.8) }, escaped(line)),
  );
  return svgSheet(
    "trench-side",
    { width, height, "aria-label": label },
    svgTag("title", {}, escaped(title)) +
      svgTag("desc", {}, escaped(label)) +
      svgTag("style", {}, trenchStyle) +
      svgTag("rect", { class: "trench-paper", x: 0, y: 0, width, height }) +
      svgTag("text", { x: 12, y: 18, "font-weight": 700, "font-size": 15 }, escaped(title)) +
      svgTag("g", { transform: `translate(0 ${title_px})` }, edge("all", profile, scale, units)) +
      svgTag("g", { transform: `translate(${headsWidth_px} ${title_px})` }, content("all", profile, scale, units)) +
      told.join(""),
  );
}

/** The same drawing in two pieces, with the numbers to dig by only, for a page that has a list for the others. */
export function trenchProfileSheet(
  profile: TrenchProfile,
  { units, width_px = usualWidth_px, zoom = "whole", raised = null }: TrenchSvgOptions,
): TrenchSheet {
  const scale = trenchScale(profile, zoom, raised, width_px - headsWidth_px);
  const label = trenchInWords(profile, units);
  const height = contentHeight_px("digging", profile, scale);
  const style = svgTag("style", {}, trenchStyle);
  return {
    heights: svgSheet(
      "trench-side",
      { width: headsWidth_px, height, "aria-hidden": "true" },
      style + edge("digging", profile, scale, units),
    ),
    branch: svgSheet(
      "trench-side",
      { width: scale.width, height, "aria-label": label },
      style + content("digging", profile, scale, units),
    ),
    label,
    reading: trenchReading(profile, scale, zoom, writtenStations(profile, scale).every, units),
    scale,
  };
}

function contentHeight_px(which: TrenchColumns, profile: TrenchProfile, { under }: TrenchScale): number {
  return under + columnsHeight_px(which, profile) + bar_px;
}

function content(which: TrenchColumns, profile: TrenchProfile, scale: TrenchScale, units: UnitSystem): string {
  return [
    heightLines(profile, scale, units),
    stationLines(profile, scale),
    trenchGround(profile, scale),
    trenchMet(profile, scale, units),
    trenchColumns(which, profile, scale, units),
    scaleBar(scale, contentHeight_px(which, profile, scale), units),
  ].join("");
}

function edge(which: TrenchColumns, profile: TrenchProfile, scale: TrenchScale, units: UnitSystem): string {
  return (
    svgTag("rect", {
      class: "trench-paper",
      width: headsWidth_px,
      height: contentHeight_px(which, profile, scale),
      x: 0,
      y: 0,
    }) +
    heightNumbers(profile, scale, units) +
    trenchColumnHeads(which, profile, scale, units)
  );
}

/** Hairlines from the ground down to the numbers of a station. */
function stationLines(profile: TrenchProfile, scale: TrenchScale): string {
  const { x, y, under } = scale;
  const lines = writtenStations(profile, scale).written.map(
    ({ station_m }) => `M${px(x(station_m))} ${px(y(profile.highest_m))}V${px(under)}`,
  );
  return svgTag("path", { class: "trench-grid", d: lines.join("") });
}

/** A length drawn to scale, which still holds when the drawing is printed smaller. */
function scaleBar({ x }: TrenchScale, height: number, units: UnitSystem): string {
  const lengths_m =
    units === "us" ? [5, 10, 20, 50, 100, 200, 500].map((feet) => feet * 0.3048) : [1, 2, 5, 10, 20, 50, 100, 200];
  const length_m = lengths_m.find((each) => x(each) - x(0) >= 40);
  if (length_m === undefined) return "";
  const [from, width, y] = [x(0), x(length_m) - x(0), height - 7];
  return svgTag(
    "g",
    { class: "trench-scale" },
    svgTag("path", { d: `M${px(from)} ${px(y - 5)}v5h${px(width)}v-5` }) +
      svgTag("text", { x: from + width + 8, y: y + 2 }, escaped(formatQuantity("length", length_m, units))),
  );
}
