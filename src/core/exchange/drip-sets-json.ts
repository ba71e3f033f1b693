import type { WaterSet } from "../drip/watering.ts";
import type { Watered } from "../drip/watering-stage.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Plan } from "../plan.ts";
import { type EvennessJson, evennessJson, type Place, pointPlace } from "./drip-parts-json.ts";
import { known } from "./known.ts";

/** Rows watered together, while they run with the filter due for cleaning. */
export interface SetJson {
  readonly name: string;
  readonly rows: readonly string[];
  readonly flow_lph: number;
  /** At the height of the gauge: there, and where the main line begins. */
  readonly gauge_kpa: number;
  readonly source_kpa: number;
  /** Left over at the tee that has least of it; below 0 it is short. */
  readonly spare_kpa: number | null;
  readonly sparest: string | null;
  readonly evenness: EvennessJson;
  readonly fill_h: number | null;
  /** Rows that can be flushed at once. */
  readonly flushable: number;
  readonly settled: boolean;
  readonly nodes: readonly NodeJson[];
}

/** A place of the set's pipes; the first is where the main line begins. */
export interface NodeJson {
  /** Place in the list of the node it is fed from. */
  readonly upstream: number | null;
  readonly at: Place | null;
  /** Place in `pipes` of the pipe that leads to it. */
  readonly pipe: number | null;
  /** Row that leaves there. */
  readonly row: string | null;
  readonly station_m: number;
  /** Of the pipe, as of the pressure. */
  readonly height_m: number;
  readonly pressure_kpa: number;
  readonly flow_lph: number;
  readonly velocity_mps: number;
}

/** A row's lateral: what it needs by itself, and what it gets while its set runs. */
export interface LateralJson {
  readonly row: string;
  readonly set: string | null;
  readonly hose_m: number;
  readonly riser_m: number;
  /** At its tee, for its emitters to give what they should. */
  readonly needed_kpa: number | null;
  readonly needed: EvennessJson;
  readonly longest: { readonly emitters: number; readonly length_m: number } | null;
  readonly flush_lph: number;
  /** null without sets. */
  readonly gets: {
    readonly flow_lph: number;
    readonly lowest_lph: number;
    readonly highest_lph: number;
    readonly lowest_kpa: number;
    readonly highest_kpa: number;
    readonly tail_kpa: number;
  } | null;
}

export function setsJson(plan: Plan, { job, watering }: Watered): readonly SetJson[] {
  const idOf = (lateral: number) => plan.rows?.rows[job.laterals.row[lateral] ?? -1]?.id ?? null;
  const atGauge_kpa = (head_m: number) => pressureOf_kpa(head_m - job.source.height_m);
  return (watering?.sets ?? []).map((set) => ({
    name: set.name,
    rows: set.laterals.flatMap((lateral) => idOf(lateral) ?? []),
    flow_lph: set.flow_lps * 3600,
    gauge_kpa: atGauge_kpa(set.gauge_m),
    source_kpa: atGauge_kpa(set.source_m),
    spare_kpa: known(pressureOf_kpa(set.spare_m)),
    sparest: idOf(set.sparest),
    evenness: evennessJson(set.evenness),
    fill_h: known(set.fill_h),
    flushable: set.flushable,
    settled: set.isSettled,
    nodes: nodesJson(plan, set, idOf),
  }));
}

function nodesJson(plan: Plan, { nodes }: WaterSet, idOf: (lateral: number) => string | null): readonly NodeJson[] {
  return [...nodes.upstream].map((upstream, node) => {
    const pipe = nodes.pipe[node] ?? -1;
    const height_m = nodes.height_m[node] ?? 0;
    return {
      upstream: upstream < 0 ? null : upstream,
      at: pointPlace(plan, nodes.point[node] ?? -1),
      pipe: pipe < 0 ? null : pipe,
      row: idOf(nodes.lateral[node] ?? -1),
      station_m: nodes.station_m[node] ?? 0,
      height_m,
      pressure_kpa: pressureOf_kpa((nodes.head_m[node] ?? 0) - height_m),
      flow_lph: (nodes.flow_lps[node] ?? 0) * 3600,
      velocity_mps: nodes.velocity_mps[node] ?? 0,
    };
  });
}

export function lateralsJson(plan: Plan, { job, watering }: Watered): readonly LateralJson[] {
  const { laterals, line } = job;
  return (watering?.laterals ?? []).map((need, i) => {
    const point = laterals.point[i] ?? -1;
    const tee_m = line === null || point < 0 ? job.source.height_m : (line.height_m[point] ?? 0);
    return {
      row: plan.rows?.rows[laterals.row[i] ?? -1]?.id ?? "",
      set: watering?.sets.find((set) => set.laterals.includes(i))?.name ?? null,
      hose_m: laterals.hose_m[i] ?? 0,
      riser_m: laterals.riser_m[i] ?? 0,
      needed_kpa: known(pressureOf_kpa(need.inlet_m - tee_m)),
      needed: evennessJson(need.evenness),
      longest: need.longest,
      flush_lph: need.flush_lps * 3600,
      gets: getsJson(watering?.emitters ?? null, laterals.offsets[i] ?? 0, laterals.offsets[i + 1] ?? 0),
    };
  });
}

function getsJson(
  emitters: { readonly flow_lps: Float64Array; readonly pressure_m: Float64Array } | null,
  from: number,
  to: number,
): LateralJson["gets"] {
  if (emitters === null || to <= from) return null;
  const flows = emitters.flow_lps.subarray(from, to);
  const heads = emitters.pressure_m.subarray(from, to);
  return {
    flow_lph: flows.reduce((sum, each) => sum + each, 0) * 3600,
    lowest_lph: flows.reduce((least, each) => Math.min(least, each), Infinity) * 3600,
    highest_lph: flows.reduce((most, each) => Math.max(most, each), 0) * 3600,
    lowest_kpa: pressureOf_kpa(heads.reduce((least, each) => Math.min(least, each), Infinity)),
    highest_kpa: pressureOf_kpa(heads.reduce((most, each) => Math.max(most, each), -Infinity)),
    tail_kpa: pressureOf_kpa(heads.at(-1) ?? 0),
  };
}
