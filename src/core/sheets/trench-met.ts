import { markInWords } from "../trench/mark-in-words.ts";
import type { TrenchMark } from "../trench/trench-marks.ts";
import { formatQuantity, text, type UnitSystem } from "../units.ts";
import { placedLabels } from "./placed-labels.ts";
import { escaped, px, svgTag } from "./svg-text.ts";
import { heightAt, thinnest_px } from "./trench-ground.ts";
import type { TrenchProfile } from "./trench-profile.ts";
import { metLines_px, type TrenchScale } from "./trench-scale.ts";

const letter_px = 6.7;
/** A row's number needs so much room beside the next. */
const row_px = 14;

/** What is met along the branch: rows with their tees, bends, branches, crossings, low and high points. */
export function trenchMet(profile: TrenchProfile, scale: TrenchScale, units: UnitSystem): string {
  return profile.marks.map((mark) => sign(mark, profile, scale, units)).join("") + words(profile, scale, units);
}

function sign(
  mark: TrenchMark,
  { line, pipe_m: thick_m }: TrenchProfile,
  { x, y, rowsFoot }: TrenchScale,
  units: UnitSystem,
): string {
  const at = x(mark.station_m);
  const ground = y(heightAt(line, mark.station_m, ({ ground_m }) => ground_m));
  const pipe = y(heightAt(line, mark.station_m, ({ pipe_m }) => pipe_m));
  const bottom = y(heightAt(line, mark.station_m, ({ bottom_m }) => bottom_m));
  const told = `${formatQuantity("length", mark.station_m, units)}: ${text(markInWords(mark), units)}`;
  const group = (content: string) =>
    svgTag("g", { "data-mark": mark.kind }, svgTag("title", {}, escaped(told)) + content);
  const lead = svgTag("path", { class: "trench-lead", d: `M${px(at)} ${px(rowsFoot + 4)}V${px(ground - 1)}` });
  switch (mark.kind) {
    case "tee":
      // From the pipe up to the ground, where its row takes over.
      return group(lead + svgTag("path", { class: "trench-tee", d: `M${px(at)} ${px(pipe)}V${px(ground)}m-3.5 0h7` }));
    case "bend":
      if (mark.elbows.length === 0) return "";
      return group(svgTag("path", { class: "trench-bend", d: `M${px(at - 4)} ${px(ground - 9)}l4 5l4 -5` }));
    case "branch":
    case "from":
    case "source":
      return group(
        svgTag("circle", {
          class: mark.kind === "branch" ? "trench-joint" : "trench-joint is-start",
          cx: at,
          cy: pipe,
          r: 4,
        }),
      );
    // Across the pipe where it becomes another one.
    case "pipes":
      return group(svgTag("path", { class: "trench-tee", d: `M${px(at - 2)} ${px(pipe - 4)}v8m4 0v-8` }));
    case "valve":
      return group(svgTag("path", { class: "trench-joint", d: `M${px(at - 5)} ${px(pipe - 4)}v8l10 -8v8Z` }));
    case "end":
      return group(svgTag("path", { class: "trench-tee", d: `M${px(at)} ${px(pipe - 5)}v10` }));
    case "crossing": {
      const to = x(mark.to_m);
      const [from_m, to_m] = [mark.station_m, mark.to_m];
      const within = line
        .filter(({ station_m }) => station_m > from_m && station_m < to_m)
        .map((each) => each.station_m);
      const sleeve = (aside: number) =>
        [from_m, ...within, to_m]
          .map((each) => `${px(x(each))} ${px(y(heightAt(line, each, ({ pipe_m }) => pipe_m)) + aside)}`)
          .join("L");
      const top = Math.min(ground, y(heightAt(line, to_m, ({ ground_m }) => ground_m))) - 8;
      const half = Math.max(thinnest_px, y(0) - y(thick_m)) / 2 + 3;
      return group(
        svgTag("path", {
          class: "trench-crossing",
          d: `M${px(at)} ${px(top + 5)}v-5H${px(to)}v5M${sleeve(-half)}M${sleeve(half)}`,
        }),
      );
    }
    // The same signs as on the map, full where a valve is fitted.
    case "low":
      return group(
        svgTag("path", {
          class: mark.isFitted ? "trench-low is-fitted" : "trench-low",
          d: `M${px(at)} ${px(bottom + 3)}c1.6 4 5 6.4 5 9.6a5 5 0 0 1 -10 0c0 -3.2 3.4 -5.6 5 -9.6z`,
        }),
      );
    case "high":
      return group(
        svgTag("path", {
          class: mark.isFitted ? "trench-high is-fitted" : "trench-high",
          d: `M${px(at)} ${px(ground - 15)}l6 11h-12Z`,
        }),
      );
    default:
      return mark satisfies never;
  }
}

/** The words for them, as far as there is room: rows upright, low points under the bottom, the rest in lines at the top. */
function words({ marks, line }: TrenchProfile, { x, y, width, rowsFoot }: TrenchScale, units: UnitSystem): string {
  const important = ["source", "from", "crossing", "branch", "valve", "high", "bend"] as const;
  const labels = important.flatMap((kind) =>
    marks.flatMap((mark) =>
      mark.kind === kind && short(mark, units) !== "" ? [{ x: middle(mark, x), text: short(mark, units) }] : [],
    ),
  );
  const lows = marks.flatMap((mark) =>
    mark.kind === "low"
      ? [
          {
            x: x(mark.station_m),
            text: short(mark, units),
            y: y(heightAt(line, mark.station_m, ({ bottom_m }) => bottom_m)),
          },
        ]
      : [],
  );
  const rows = writtenRows(marks, x);
  const label = (at: number, level: number, words_: string) =>
    svgTag("text", { class: "trench-label", x: at, y: level, "text-anchor": "middle" }, escaped(words_));
  return [
    ...placedLabels(labels, metLines_px.length, letter_px, width).map((each) =>
      label(each.x, metLines_px[each.line] ?? 0, each.text),
    ),
    ...placedLabels(lows, 1, letter_px, width).map((each) => label(each.x, each.y + 32, each.text)),
    ...rows.map(({ at, row }) =>
      svgTag(
        "text",
        { class: "trench-label", transform: `translate(${px(at + 4.5)} ${px(rowsFoot)}) rotate(-90)` },
        escaped(row),
      ),
    ),
  ].join("");
}

/** Rows whose numbers have room. */
function writtenRows(marks: readonly TrenchMark[], x: TrenchScale["x"]) {
  let lastRow = -Infinity;
  return marks.flatMap((mark) => {
    if (mark.kind !== "tee" || x(mark.station_m) - lastRow < row_px) return [];
    lastRow = x(mark.station_m);
    return [{ at: lastRow, row: mark.row }];
  });
}

/** Does every row with a tee have room for its number? */
export function areRowsAllWritten({ marks }: TrenchProfile, { x }: TrenchScale): boolean {
  return writtenRows(marks, x).length === marks.filter(({ kind }) => kind === "tee").length;
}

function middle(mark: TrenchMark, x: TrenchScale["x"]): number {
  return mark.kind === "crossing" ? x((mark.station_m + mark.to_m) / 2) : x(mark.station_m);
}

function short(mark: TrenchMark, units: UnitSystem): string {
  switch (mark.kind) {
    case "source":
      return mark.name ?? "source";
    case "from":
      return `from ${mark.branch}`;
    case "branch":
      return `to branch ${mark.branch}`;
    case "tee":
      return mark.row;
    case "bend":
      return mark.elbows.length === 0 ? "" : formatQuantity("angle", mark.angle_deg, units, 0);
    case "crossing":
      return mark.name ?? mark.feature;
    case "low":
      return mark.isFitted ? "low: drain" : "low";
    case "high":
      return mark.isFitted ? "high: air" : "high";
    case "pipes":
      return "";
    case "valve":
      return `valve of set ${mark.set}`;
    case "end":
      return "end";
    default:
      return mark satisfies never;
  }
}
