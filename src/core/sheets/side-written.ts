import type { UnitSystem } from "../units.ts";
import { formatQuantity, text } from "../units.ts";
import type { RowSide, SidePost } from "./row-side.ts";
import type { SideDimension } from "./side-dimensions.ts";
import { groundAt } from "./side-ground.ts";
import type { SideScale } from "./side-scale.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

const levels: Readonly<Record<SideDimension["kind"], number>> = {
  "end-gap": 14,
  "vine-spacing": 14,
  "anchor-out": 30,
  brace: 46,
  bay: 30,
  row: 62,
};
const kinds: Readonly<Record<SideDimension["kind"], string>> = {
  "end-gap": "End post to vine",
  "vine-spacing": "Vine to vine",
  "anchor-out": "End post to anchor",
  brace: "End post to brace",
  bay: "Post to post",
  row: "Row length",
};
/** A distance narrower than its writing is left to the list. */
const letter_px = 7.4;

/** Distances along the row under the drawing, and how deep and how high the posts of the start are. */
export function sideWritten(side: RowSide, scale: SideScale, units: UnitSystem): string {
  const along = side.dimensions.map((dimension) => alongRow(dimension, scale, units));
  const first = side.posts.find(({ kind }) => kind === "end");
  const line = side.posts.find(({ kind }) => kind === "line");
  const upright = [first, line].flatMap((post) => (post === undefined ? [] : [depth(side, post, scale, units)]));
  return [...along, ...upright].join("");
}

function alongRow(dimension: SideDimension, { x, under }: SideScale, units: UnitSystem): string {
  const [from, to] = [x(dimension.from_m), x(dimension.to_m)];
  const y = under + levels[dimension.kind];
  const label = text(dimension.label, units);
  if (to - from < label.length * letter_px + 12) return "";
  const [middle, half] = [(from + to) / 2, (label.length * letter_px) / 2];
  const station = (at_m: number) => formatQuantity("length", at_m, units);
  const told = `${kinds[dimension.kind]}: from ${station(dimension.from_m)} to ${station(dimension.to_m)}, ${label}`;
  return svgTag(
    "g",
    { class: "side-dimension", "data-dimension": dimension.kind },
    svgTag("title", {}, escaped(told)) +
      svgTag("path", {
        d: `M${px(from)} ${px(y - 5)}v10M${px(to)} ${px(y - 5)}v10M${px(from)} ${px(y)}H${px(middle - half)}M${px(middle + half)} ${px(y)}H${px(to)}`,
      }) +
      svgTag("text", { x: middle, y: y + 4.5, "text-anchor": "middle" }, escaped(label)),
  );
}

/** Beside a post: how deep it stands. */
function depth(side: RowSide, post: SidePost, { x, y }: SideScale, units: UnitSystem): string {
  const foot_m = groundAt(side.ground, post.station_m);
  const [top, low] = [y(foot_m), y(foot_m - post.depth_m)];
  const [start, at] = [x(post.station_m), x(post.station_m - post.lean * post.depth_m) + 12];
  const beside = Math.max(start + 12, at);
  const deep = formatQuantity("length", post.depth_m, units);
  const told = `${post.kind === "end" ? "End post" : "Line post"}: ${formatQuantity("length", post.length_m, units)} long, ${formatQuantity("length", post.height_m, units)} over the ground, ${deep} in it`;
  if (low - top < 12) return "";
  return svgTag(
    "g",
    { class: "side-dimension", "data-dimension": "embedment" },
    svgTag("title", {}, escaped(told)) +
      svgTag("path", {
        d: `M${px(beside - 4)} ${px(top)}h8M${px(beside - 4)} ${px(low)}h8M${px(beside)} ${px(top)}V${px(low)}`,
      }) +
      svgTag("text", { x: beside + 7, y: (top + low) / 2 + 4.5 }, escaped(deep)),
  );
}

/** How many pixels wide the heights are written. */
export const heightsWidth_px = 144;
const line_px = 15;

/** The wires' heights and the top of the line posts at the edge of the drawing, pushed apart where they are close; for the ground at the start. */
export function sideHeights(side: RowSide, { y, height }: SideScale, units: UnitSystem): string {
  const foot_m = groundAt(side.ground, 0);
  const wires = [...side.wires].sort((a, b) => a.height_m - b.height_m);
  let lowest = y(foot_m) + line_px;
  const written = wires.map(({ purpose, height_m, count }) => {
    const at = Math.min(y(foot_m + height_m), lowest - line_px);
    lowest = at;
    const told = `${purpose}${count > 1 ? ` ×${count}` : ""} ${formatQuantity("length", height_m, units)}`;
    return svgTag(
      "g",
      { class: `side-wire wire-${purpose}` },
      svgTag("path", {
        d: `M${heightsWidth_px - 14} ${px(at)}L${heightsWidth_px} ${px(y(foot_m + height_m))}`,
      }) + svgTag("text", { x: heightsWidth_px - 17, y: at + 4.5, "text-anchor": "end" }, escaped(told)),
    );
  });
  return svgTag("rect", { class: "side-paper", width: heightsWidth_px, height, x: 0, y: 0 }) + written.join("");
}
