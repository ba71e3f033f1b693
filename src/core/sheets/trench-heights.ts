import { formatQuantity, type UnitSystem } from "../units.ts";
import { escaped, px, svgTag } from "./svg-text.ts";
import { headsWidth_px } from "./trench-columns.ts";
import type { TrenchProfile } from "./trench-profile.ts";
import type { TrenchScale } from "./trench-scale.ts";

const foot_m = 0.3048;
const least_px = 26;

/** Round heights so far apart that they can be written, from the bottom up; none where the ground is nowhere known. */
function roundHeights({ ground, lowest_m, highest_m }: TrenchProfile, { y }: TrenchScale, units: UnitSystem) {
  if (ground === "unknown") return [];
  const unit_m = units === "us" ? foot_m : 1;
  const step_m =
    [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100].map((each) => each * unit_m).find((each) => y(0) - y(each) >= least_px) ??
    1000;
  const first = Math.ceil(lowest_m / step_m - 1e-9);
  const count = Math.floor(highest_m / step_m + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step_m);
}

/** Hairlines across the drawing at round heights. */
export function heightLines(profile: TrenchProfile, scale: TrenchScale, units: UnitSystem): string {
  const lines = roundHeights(profile, scale, units).map((height_m) => `M0 ${px(scale.y(height_m))}H${px(scale.width)}`);
  return lines.length === 0 ? "" : svgTag("path", { class: "trench-grid", d: lines.join("") });
}

/** The same heights written at its edge, and what stands over and under them. */
export function heightNumbers(profile: TrenchProfile, scale: TrenchScale, units: UnitSystem): string {
  const right = headsWidth_px - 10;
  const told = (level: number, words: string) =>
    svgTag("text", { x: right, y: level, "text-anchor": "end" }, escaped(words));
  const tees = profile.marks.some(({ kind }) => kind === "tee") ? [told(scale.rowsFoot - 2, "Tee of row")] : [];
  const heights = roundHeights(profile, scale, units)
    .map((height_m) => ({ height_m, at: scale.y(height_m) }))
    .filter(({ at }) => at > scale.rowsFoot + 8)
    .map(({ height_m, at }) => told(at + 4.5, formatQuantity("length", height_m, units)));
  const unknown = profile.ground === "unknown" ? [told(scale.y(profile.highest_m) + 4.5, "Ground")] : [];
  return [...tees, ...heights, ...unknown].join("");
}
