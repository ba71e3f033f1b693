import { formatQuantity, type UnitSystem } from "../units.ts";
import type { ChartSet, SupplyChart } from "./supply-chart.ts";

/** More sets than these are told by their range. */
const told = 6;

/** What the chart shows, in sentences: what the water gives, and where each set meets it. */
export function supplyInWords(chart: SupplyChart, units: UnitSystem): string {
  const flow = (value_lph: number) => formatQuantity("flow", value_lph, units);
  const pressure = (value_kpa: number) => formatQuantity("pressure", value_kpa, units);
  const { curves, sets, most_lph } = chart;
  const still = curves.find(({ of }) => of === "gauge")?.points[0]?.pressure_kpa ?? 0;
  const most = most_lph === null ? "" : `, and the field ${flow(most_lph)} at most`;
  const gives = `The water gives ${pressure(still)} at the gauge with nothing running to the field${most}.`;
  if (sets.length === 0) return `${gives} No sets are worked out.`;
  const meets = ({ name, at, isShort }: ChartSet) =>
    `set ${name} takes ${flow(at.flow_lph)} at ${pressure(at.pressure_kpa)}${isShort ? ", too little" : ""}`;
  if (sets.length <= told) return `${gives} Where the main line begins, ${sets.map(meets).join("; ")}.`;
  const flows = sets.map(({ at }) => at.flow_lph);
  const pressures = sets.map(({ at }) => at.pressure_kpa);
  const short = sets.filter(({ isShort }) => isShort).length;
  return (
    `${gives} The ${sets.length} sets take ${flow(Math.min(...flows))} to ${flow(Math.max(...flows))} at ` +
    `${pressure(Math.min(...pressures))} to ${pressure(Math.max(...pressures))} where the main line begins` +
    `${short === 0 ? "" : `; ${short} of them get too little`}.`
  );
}

/** How the chart is to be read. */
export function supplyReading(
  { sets, margin_ratio, counted_lph, least_lph }: SupplyChart,
  units: UnitSystem,
): readonly string[] {
  const margin = formatQuantity("ratio", margin_ratio, units);
  return [
    "Dotted: pressure at the gauge. Dashed: where the main line begins, filter clean. Thick: there, filter due for cleaning.",
    ...(sets.length === 0
      ? []
      : ["Thin lines: what each set would take at other pressures; it runs where that meets the thick line."]),
    ...(counted_lph === null || margin_ratio === 0
      ? []
      : [`Broken upright line: what is counted on, ${margin} less than the most.`]),
    ...(least_lph === 0
      ? []
      : [`Least: with less than ${formatQuantity("flow", least_lph, units)} the pump does not run steady.`]),
    ...(sets.some(({ isShort }) => isShort) ? ["An open dot: a row of that set gets less than it needs."] : []),
  ];
}
