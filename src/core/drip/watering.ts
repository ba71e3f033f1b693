import type { Phrase } from "../finding.ts";
import type { SupplyCurve } from "../hydraulics/network.ts";
import type { Surge } from "../hydraulics/surge.ts";
import type { PipeSettings } from "../project/project.ts";
import type { ValvePattern } from "../project/water-settings.ts";
import type { WateringJob } from "./watering-job.ts";

/** What the drip system does with the water there is. Lists by lateral are in the order of the job's laterals. */
export interface Watering {
  /** What the source gives to the main line: other users and head works (dirty) taken off; null while the water is not known. */
  readonly supply: Supply | null;
  readonly laterals: readonly LateralNeed[];
  /** None while the water is not known or no route is laid. */
  readonly sets: readonly WaterSet[];
  /** Every emitter, in the order of the job's laterals, while its own set runs; null without sets. */
  readonly emitters: EmitterStates | null;
  readonly pipes: readonly PipeLine[];
  /** Evenness of each block, in the order of the blocks; null for a block that no set waters. */
  readonly blocks: readonly (Evenness | null)[];
  readonly highest: readonly HighestPressure[];
  /** What each pattern of valves comes to, the chosen one with the others. */
  readonly patterns: readonly PatternCost[];
  /** In the order of the blocks; null while evapotranspiration is not known. */
  readonly season: readonly BlockSeason[] | null;
  readonly firstRun: readonly CupCheck[];
  /** What it takes besides the pipe in the trench, the hose and the emitters. */
  readonly parts: readonly WaterPart[];
  /** Head lost between the source and the laterals cannot be afforded even with the widest pipes. */
  readonly isShort: boolean;
}

export interface Supply {
  /** At the gauge: total heads, others' flow taken off. */
  readonly atGauge: SupplyCurve;
  /** Where the main line begins: head works taken off as well, filter dirty; and clean. */
  readonly dirty: SupplyCurve;
  readonly clean: SupplyCurve;
  /** No set may take more: what is stated, what was measured, what the curve ends with. */
  readonly most_lps: number;
  /** A set should take at least this; 0: any. */
  readonly least_lps: number;
  /** Total head with nothing flowing, nothing lost. */
  readonly static_m: number;
}

/** What one lateral needs by itself. */
export interface LateralNeed {
  /** Total head at its tee for its emitters to give their nominal flow in the mean (compensating: for the lowest to be in its range). */
  readonly inlet_m: number;
  /** Then: its flow, lowest and highest emitter, and its evenness. */
  readonly flow_lps: number;
  readonly lowest_lps: number;
  readonly highest_lps: number;
  readonly evenness: Evenness;
  /** Longest hose, in emitters and in metres along this row, that keeps the evenness asked for at the inlet head; null: longer than any row. */
  readonly longest: { readonly emitters: number; readonly length_m: number } | null;
  /** To flush its end at 0.3 m/s beside what its emitters give. */
  readonly flush_lps: number;
}

export interface Evenness {
  readonly emitters: number;
  readonly lowest_lps: number;
  readonly mean_lps: number;
  readonly highest_lps: number;
  /** Emission uniformity, statistical uniformity, and (highest - lowest) / highest; shares. */
  readonly emission_ratio: number;
  readonly statistical_ratio: number;
  readonly variation_ratio: number;
  /** Emitters that get no water. */
  readonly dry: number;
}

export interface WaterSet {
  /** "1", "2", … in the order of the rows. */
  readonly name: string;
  /** Indexes into the job's laterals. */
  readonly laterals: readonly number[];
  /** With the filter due for cleaning. */
  readonly flow_lps: number;
  /** Total head at the gauge and where the main line begins. */
  readonly gauge_m: number;
  readonly source_m: number;
  /** Head to spare at the tee that has least of it, with the reserve of the supply kept; below 0 it is short. */
  readonly spare_m: number;
  readonly sparest: number;
  readonly evenness: Evenness;
  /** The pipes that feed it, as a tree from the source on. */
  readonly nodes: SetNodes;
  /** To fill its pipes and hoses. */
  readonly fill_h: number;
  /** Laterals that can be flushed at once. */
  readonly flushable: number;
  readonly isSettled: boolean;
}

/** Nodes of a set's pipes as parallel arrays; node 0 is where the main line begins. */
export interface SetNodes {
  readonly upstream: Int32Array;
  /** Point of the route. */
  readonly point: Int32Array;
  /** Index into the plan's pipes of the pipe to the node; -1 for node 0. */
  readonly pipe: Int32Array;
  /** Lateral that leaves there; -1 for none. */
  readonly lateral: Int32Array;
  /** Along the pipes from the source. */
  readonly station_m: Float64Array;
  readonly height_m: Float64Array;
  readonly head_m: Float64Array;
  readonly flow_lps: Float64Array;
  readonly velocity_mps: Float64Array;
}

export interface EmitterStates {
  /** Pressure head. */
  readonly pressure_m: Float64Array;
  readonly flow_lps: Float64Array;
}

/** A pipe of one size along legs of the route that follow each other, upstream first. */
export interface PipeLine {
  /** 0: the main line, for all sets; 1 and on: the submain (or own line) of that set. */
  readonly line: number;
  readonly pipe: PipeSettings;
  /** Points of the route at the downstream ends of its legs. */
  readonly points: readonly number[];
  /** Those of its points where a row takes its water from it. */
  readonly tees: readonly number[];
  readonly length_m: number;
}

/** The most that something is to stand, against what it stands. */
export interface HighestPressure {
  readonly what: "pipe" | "hose" | "emitter";
  /** Valves closed and the supply at its highest; running, filter clean; a valve that closes while all others are closed. */
  readonly when: "closed" | "running" | "surge";
  /** Index into the pipes; -1 for hose and emitters. */
  readonly pipe: number;
  /** Point of the route, and lateral (-1 for pipe). */
  readonly point: number;
  readonly lateral: number;
  /** Total head there, and the height it presses from: pressure is their difference, and the rise of a surge on top. */
  readonly head_m: number;
  readonly height_m: number;
  /** null unless a valve closes. */
  readonly surge: Surge | null;
  readonly pressure_kpa: number;
  readonly most_kpa: number;
}

export interface PatternCost {
  readonly pattern: ValvePattern;
  readonly valves: number;
  readonly pipe_m: number;
  /** null where something of it is not priced. */
  readonly price: number | null;
  /** Pipe by `cost_pm`, what the choice of sizes goes by. */
  readonly pipeCost: number;
  readonly isShort: boolean;
}

/** Water of one block through the year. */
export interface BlockSeason {
  readonly months: readonly SeasonMonth[];
  /** In the month that needs most. */
  readonly peak: SeasonMonth;
  /** First month, with parts, in which the soil's store is used up and watering begins; null: never. */
  readonly firstWatering: number | null;
  /** Over the year, usual and at the peak share. */
  readonly usual_l: number;
  readonly full_l: number;
}

/** One month of one block. Litres are what has to be given: efficiency and leaching are in. */
export interface SeasonMonth {
  /** 1 is January. */
  readonly month: number;
  readonly reference_mmpd: number;
  readonly crop: number;
  /** A vine a week: grown at the usual share, grown at the peak share, young. */
  readonly usual_lpw: number;
  readonly peak_lpw: number;
  readonly young_lpw: number;
  /** Hours a day of one set, and of all sets one after another: at the usual share, and at the peak share. */
  readonly usual_h: number;
  readonly peak_h: number;
  readonly usualAll_h: number;
  readonly all_h: number;
  /** The whole block a day. */
  readonly usual_lpd: number;
  readonly peak_lpd: number;
}

/** What runs into a cup in three minutes, and the pressure at the far end: the first run. */
export interface CupCheck {
  readonly set: number;
  readonly lateral: number;
  /** At the first, middle and last vine of the lateral (fewer where it has fewer); `emitter` counts through all emitters of the job. */
  readonly cups: readonly { readonly emitter: number; readonly volume_l: number }[];
  readonly tail_kpa: number;
}

export const waterPartKinds = [
  "isolating-valve",
  "backflow-device",
  "check-valve",
  "filter",
  "regulator",
  "gauge",
  "flow-meter",
  "air-vent",
  "injector-port",
  "row-cock",
  "set-valve",
  "set-regulator",
  "valve-box",
  "controller",
  "valve-wire",
  "flush-cap",
] as const;
export type WaterPartKind = (typeof waterPartKinds)[number];

/** Pieces or metres of one article; as a part of the trench. */
export interface WaterPart {
  readonly kind: WaterPartKind;
  readonly article: string;
  readonly item: string;
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  readonly quantity: number;
  /** By row of the plan; null when it serves all of them. */
  readonly perRow: readonly number[] | null;
  readonly pieces_m: readonly number[];
  readonly purpose: string;
  readonly spare: number;
}

/** Works a watering out; null: not now. */
export type WateringOf = (job: WateringJob) => Watering | null;
