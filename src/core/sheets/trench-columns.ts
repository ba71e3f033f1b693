import type { TrenchStation } from "../trench/trench-stations.ts";
import { inUnit, type UnitSystem } from "../units.ts";
import { escaped, px, svgTag } from "./svg-text.ts";
import type { TrenchProfile } from "./trench-profile.ts";
import type { TrenchScale } from "./trench-scale.ts";

/** Which numbers stand under the drawing: those that a person digs by, or all. */
export type TrenchColumns = "digging" | "all";

interface Column {
  readonly head: string;
  readonly value: (station: TrenchStation) => string;
}

/** Upright numbers need so much room beside each other, and so much along themselves. */
const apart_px = 15;
const tall_px = 54;
export const headsWidth_px = 144;

/** The lines of numbers under the drawing; without heights there is only what is dug and where. */
function columnsOf(which: TrenchColumns, { ground }: TrenchProfile, units: UnitSystem): readonly Column[] {
  const far = units === "us" ? "ft" : "m";
  const far_m = (value_m: number) => (Number.isFinite(value_m) ? inUnit("length", value_m, far).toFixed(2) : "–");
  const deep = units === "us" ? "in" : "m";
  const station: Column = { head: `Station, ${far}`, value: ({ station_m }) => far_m(station_m) };
  const dig: Column = {
    head: `To dig, ${deep}`,
    value: ({ depth_m }) => inUnit("length", depth_m, deep).toFixed(units === "us" ? 1 : 2),
  };
  if (which === "digging" || ground === "unknown") return [station, dig];
  return [
    station,
    { head: `On the slope, ${far}`, value: ({ slopeStation_m }) => far_m(slopeStation_m) },
    { head: `Ground, ${far}`, value: ({ ground_m }) => far_m(ground_m) },
    { head: `Bottom, ${far}`, value: ({ bottom_m }) => far_m(bottom_m) },
    dig,
  ];
}

/** The stations that are written: every so-many-th of the even ones, so that their numbers have room, and the last. */
export function writtenStations(
  { stations }: TrenchProfile,
  { x }: TrenchScale,
): { readonly written: readonly TrenchStation[]; readonly every: number } {
  const even = stations.filter(({ isStep }) => isStep);
  const [first, second] = even;
  const last = even.at(-1);
  if (first === undefined || second === undefined || last === undefined) return { written: even, every: 1 };
  const step_px = x(second.station_m) - x(first.station_m);
  const every = [1, 2, 4, 5, 10, 20, 50, 100].find((n) => n * step_px >= apart_px) ?? even.length;
  const chosen = even.filter((_, i) => i % every === 0 && x(last.station_m) - x(even[i]?.station_m ?? 0) >= apart_px);
  return { written: [...chosen, last], every };
}

/** How tall the numbers are together. */
export function columnsHeight_px(which: TrenchColumns, profile: TrenchProfile): number {
  return columnsOf(which, profile, "metric").length * tall_px;
}

/** Upright numbers under every station that is written, with a hairline down to them. */
export function trenchColumns(
  which: TrenchColumns,
  profile: TrenchProfile,
  scale: TrenchScale,
  units: UnitSystem,
): string {
  const { x, under, width } = scale;
  return columnsOf(which, profile, units)
    .map(({ value }, c) => {
      const top = under + c * tall_px;
      const numbers = writtenStations(profile, scale).written.map((station) =>
        svgTag(
          "text",
          { transform: `translate(${px(x(station.station_m) + 4)} ${px(top + tall_px - 4)}) rotate(-90)` },
          escaped(value(station)),
        ),
      );
      return svgTag(
        "g",
        { class: "trench-column" },
        svgTag("path", { d: `M0 ${px(top)}H${px(width)}` }) + numbers.join(""),
      );
    })
    .join("");
}

/** What the numbers are, at the edge of the drawing. */
export function trenchColumnHeads(
  which: TrenchColumns,
  profile: TrenchProfile,
  { under }: TrenchScale,
  units: UnitSystem,
): string {
  return columnsOf(which, profile, units)
    .map(({ head }, c) => {
      const top = under + c * tall_px;
      return svgTag(
        "g",
        { class: "trench-column" },
        svgTag("path", { d: `M0 ${px(top)}H${headsWidth_px}` }) +
          svgTag("text", { x: headsWidth_px - 10, y: top + tall_px / 2 + 4, "text-anchor": "end" }, escaped(head)),
      );
    })
    .join("");
}
