import type { BlockSeason, Evenness, PatternCost, PipeLine, WaterPart } from "../drip/watering.ts";
import type { SupplyCurve } from "../hydraulics/network.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Plan } from "../plan.ts";
import type { WaterKind } from "../project/water-settings.ts";
import { text, type UnitSystem } from "../units.ts";
import { type EvennessJson, evennessJson, type Place, pointPlace } from "./drip-parts-json.ts";
import { type LateralJson, lateralsJson, type SetJson, setsJson } from "./drip-sets-json.ts";
import { known } from "./known.ts";

/** What the water there is does for the rows; lists are empty while the water is not known or no route is laid. */
export interface DripJson {
  /** null while the watering is not worked out at all. */
  readonly water: WaterKind | null;
  /** Heights of source, line or rows are not all known: those that are not count as the source's own. */
  readonly level: boolean;
  readonly supply: SupplyJson | null;
  /** A row gets less than it needs even with the widest pipes. */
  readonly short: boolean;
  readonly sets: readonly SetJson[];
  readonly pipes: readonly PipeJson[];
  readonly laterals: readonly LateralJson[];
  readonly blocks: readonly { readonly block: string; readonly evenness: EvennessJson | null }[];
  readonly highest: readonly HighestJson[];
  readonly patterns: readonly PatternCost[];
  /** null while evapotranspiration is not known. */
  readonly season: readonly (BlockSeason & { readonly block: string })[] | null;
  readonly firstRun: readonly CupsJson[];
  readonly parts: readonly (Pick<WaterPart, "kind" | "article" | "unit" | "quantity" | "purpose"> & {
    readonly spec: string;
  })[];
}

export interface SupplyJson {
  /** With nothing flowing, at the gauge. */
  readonly static_kpa: number;
  /** null: nothing ends it. */
  readonly most_lph: number | null;
  /** The same less the margin. */
  readonly counted_lph: number | null;
  readonly least_lph: number;
  readonly margin_ratio: number;
  /** By flow to the field: at the gauge, and where the main line begins with the filter clean and due for cleaning. */
  readonly gauge: readonly CurvePointJson[];
  readonly clean: readonly CurvePointJson[];
  readonly dirty: readonly CurvePointJson[];
}

export interface CurvePointJson {
  readonly flow_lph: number;
  readonly pressure_kpa: number;
}

/** `line` 0 is the main line, 1 and on that of the set; `positions` are the downstream ends of its legs. */
export type PipeJson = Pick<PipeLine, "line" | "length_m"> & {
  readonly size: string;
  readonly outside_mm: number;
  readonly inside_mm: number;
  readonly positions: readonly (Place | null)[];
};

export interface HighestJson {
  readonly what: "pipe" | "hose" | "emitter";
  readonly when: "closed" | "running" | "surge";
  /** Place in `pipes`. */
  readonly pipe: number | null;
  readonly row: string | null;
  readonly at: Place | null;
  readonly pressure_kpa: number;
  readonly most_kpa: number;
}

export interface CupsJson {
  readonly set: string;
  readonly row: string;
  /** Emitters count from the water end, 1 first. */
  readonly cups: readonly { readonly emitter: number; readonly volume_l: number }[];
  readonly tail_kpa: number;
}

export const noDrip: DripJson = {
  water: null,
  level: false,
  supply: null,
  short: false,
  sets: [],
  pipes: [],
  laterals: [],
  blocks: [],
  highest: [],
  patterns: [],
  season: null,
  firstRun: [],
  parts: [],
};

/** The watering of a plan; words in the units asked for. */
export function dripJson(plan: Plan, units: UnitSystem): DripJson {
  const watered = plan.watering;
  if (watered === null) return noDrip;
  const { job, watering } = watered;
  const rowOf = (lateral: number) => plan.rows?.rows[job.laterals.row[lateral] ?? -1]?.id ?? null;
  const told = { ...noDrip, water: job.water.kind, level: job.source.isLevel };
  if (watering === null) return told;
  return {
    ...told,
    supply: supplyJson(plan),
    short: watering.isShort,
    sets: setsJson(plan, watered),
    pipes: watering.pipes.map(({ line, length_m, pipe, points }) => ({
      line,
      size: pipe.size,
      outside_mm: pipe.outside_mm,
      inside_mm: pipe.inside_mm,
      length_m,
      positions: points.map((point) => pointPlace(plan, point)),
    })),
    laterals: lateralsJson(plan, watered),
    blocks: job.blocks.map(({ id }, b) => ({ block: id, evenness: evennessOrNull(watering.blocks[b] ?? null) })),
    highest: watering.highest.map(({ what, when, pipe, point, lateral, pressure_kpa, most_kpa }) => ({
      what,
      when,
      pipe: pipe < 0 ? null : pipe,
      row: rowOf(lateral),
      at: pointPlace(plan, point),
      pressure_kpa,
      most_kpa,
    })),
    patterns: watering.patterns,
    season: watering.season?.map((season, b) => ({ block: job.blocks[b]?.id ?? "", ...season })) ?? null,
    firstRun: watering.firstRun.map(({ set, lateral, cups, tail_kpa }) => ({
      set: watering.sets[set]?.name ?? "",
      row: rowOf(lateral) ?? "",
      cups: cups.map(({ emitter, volume_l }) => ({
        emitter: emitter - (job.laterals.offsets[lateral] ?? 0) + 1,
        volume_l,
      })),
      tail_kpa,
    })),
    parts: watering.parts.map(({ kind, article, spec, unit, quantity, purpose }) => ({
      kind,
      article,
      spec: text(spec, units),
      unit,
      quantity,
      purpose,
    })),
  };
}

function evennessOrNull(evenness: Evenness | null): EvennessJson | null {
  return evenness === null ? null : evennessJson(evenness);
}

function supplyJson({ watering: watered }: Plan): SupplyJson | null {
  const supply = watered?.watering?.supply ?? null;
  if (watered === null || supply === null) return null;
  const { source, water } = watered.job;
  const points = ({ flow_lps, head_m }: SupplyCurve) =>
    [...flow_lps].map((flow, i) => ({
      flow_lph: flow * 3600,
      pressure_kpa: pressureOf_kpa((head_m[i] ?? 0) - source.height_m),
    }));
  return {
    static_kpa: pressureOf_kpa(supply.static_m - source.height_m),
    most_lph: known(supply.most_lps * 3600),
    counted_lph: known(supply.most_lps * 3600 * (1 - water.margin_ratio)),
    least_lph: supply.least_lps * 3600,
    margin_ratio: water.margin_ratio,
    gauge: points(supply.atGauge),
    clean: points(supply.clean),
    dirty: points(supply.dirty),
  };
}
