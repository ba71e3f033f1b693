import { type SetDemand, setDemands } from "../drip/set-demands.ts";
import type { Watered } from "../drip/watering-stage.ts";
import type { SupplyCurve } from "../hydraulics/network.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { supplyHead_m } from "../hydraulics/read-supply.ts";

export interface ChartPoint {
  readonly flow_lph: number;
  /** At the height of the gauge. */
  readonly pressure_kpa: number;
}

/** What the water gives by flow against what each set takes; where the two meet it runs. */
export interface SupplyChart {
  readonly curves: readonly { readonly of: SupplyLine; readonly points: readonly ChartPoint[] }[];
  readonly sets: readonly ChartSet[];
  /** No set may take more; null: nothing ends it. With the margin taken off: what is counted on. */
  readonly most_lph: number | null;
  readonly counted_lph: number | null;
  /** A set should take at least this; 0: any. */
  readonly least_lph: number;
  readonly margin_ratio: number;
  /** Of all that is drawn. */
  readonly widest_lph: number;
  readonly highest_kpa: number;
}

export interface ChartSet {
  readonly name: string;
  /** Where it runs with the filter due for cleaning. */
  readonly at: ChartPoint;
  /** What it would take at other pressures. */
  readonly demand: readonly ChartPoint[];
  readonly isShort: boolean;
}

/** At the gauge, and where the main line begins with the filter clean and due for cleaning. */
export const supplyLines = ["gauge", "clean", "dirty"] as const;
export type SupplyLine = (typeof supplyLines)[number];

const pieces = 80;

/** The supply against the demand of each set; null while the water is not known. Gives no findings. */
export function supplyChart({ job, watering }: Watered): SupplyChart | null {
  const supply = watering?.supply ?? null;
  if (supply === null || watering === null) return null;
  const { most_lps, least_lps } = supply;
  const height_m = job.source.height_m;
  const point = (flow_lps: number, head_m: number): ChartPoint => ({
    flow_lph: flow_lps * 3600,
    pressure_kpa: pressureOf_kpa(head_m - height_m),
  });
  const widest_lps = widestOf(watering.sets, supply.atGauge, most_lps);
  const line = (of: SupplyLine, curve: SupplyCurve) => {
    const last_lps = Math.min(widest_lps, most_lps);
    const points = Array.from({ length: pieces + 1 }, (_, i) => {
      const flow_lps = (last_lps * i) / pieces;
      return point(flow_lps, supplyHead_m(curve, flow_lps));
    });
    return { of, points: points.filter(({ pressure_kpa }) => pressure_kpa >= 0) };
  };
  const curves = [line("gauge", supply.atGauge), line("clean", supply.clean), line("dirty", supply.dirty)];
  const demands = setDemands(job, watering);
  const sets = watering.sets.map((set, i): ChartSet => {
    const at = point(set.flow_lps, set.source_m);
    return { name: set.name, at, demand: demandPoints(demands[i], point), isShort: set.spare_m < 0 };
  });
  const isEnded = most_lps < Infinity;
  return {
    curves,
    sets,
    most_lph: isEnded ? most_lps * 3600 : null,
    counted_lph: isEnded ? most_lps * 3600 * (1 - job.water.margin_ratio) : null,
    least_lph: least_lps * 3600,
    margin_ratio: job.water.margin_ratio,
    widest_lph: widest_lps * 3600,
    highest_kpa: Math.max(
      ...curves.flatMap(({ points }) => points.map(({ pressure_kpa }) => pressure_kpa)),
      ...sets.map(({ at }) => at.pressure_kpa),
    ),
  };
}

function demandPoints(demand: SetDemand | undefined, point: (flow_lps: number, head_m: number) => ChartPoint) {
  return [...(demand?.flow_lps ?? [])].map((flow_lps, i) => point(flow_lps, demand?.head_m[i] ?? 0));
}

/** As far as anything runs, and a little further. */
function widestOf(sets: readonly { readonly flow_lps: number }[], curve: SupplyCurve, most_lps: number): number {
  const taken_lps = Math.max(0, ...sets.map(({ flow_lps }) => flow_lps));
  if (most_lps < Infinity) return Math.max(most_lps, taken_lps, 1e-6) * 1.04;
  return taken_lps > 0 ? taken_lps * 1.6 : Math.max(curve.flow_lps.at(-1) ?? 0, 1e-3);
}
