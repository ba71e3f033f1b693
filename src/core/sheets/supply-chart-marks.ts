import { placedLabels } from "./placed-labels.ts";
import type { ChartPoint, SupplyChart } from "./supply-chart.ts";
import { plot, type SupplyScale, tagLine_px, tagLines, top_px } from "./supply-chart-scale.ts";
import { escaped, px, svgTag } from "./svg-text.ts";

const letter_px = 7.4;
/** Sets that run within so many pixels share a number plate. */
const beside_px = 9;

/** Upright lines at what is counted on, at the most, and at the least that a pump holds. */
export function limitLines(
  { most_lph, counted_lph, least_lph, margin_ratio }: SupplyChart,
  scale: SupplyScale,
): string {
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
    least_lph === 0 ? "" : upright(least_lph, "least", "chart-counted"),
  ].join("");
}

/** A dot where each set runs, and its number over the plot; sets that run at the same place share one. */
export function setMarks({ sets }: SupplyChart, { x, y, width }: SupplyScale): string {
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
