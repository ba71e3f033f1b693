import type { Finding, Severity } from "../finding.ts";
import type { Cause } from "../ground/ground.ts";
import type { MaterialCost, MaterialLine } from "../materials/material-line.ts";
import type { Plan } from "../plan.ts";
import type { WirePurpose } from "../project/project.ts";
import { text, type UnitSystem } from "../units.ts";
import type { CompassReading } from "./compass-reading.ts";
import { type DripJson, dripJson, noDrip } from "./drip-json.ts";
import { placed } from "./positions.ts";
import { position } from "./rounding.ts";
import { isSketch } from "./sketch.ts";
import {
  type CoilsJson,
  type CostJson,
  coilsJson,
  costJson,
  noCost,
  noTrellis,
  type PartJson,
  type RunJson,
  rowStructureJson,
  type TrellisJson,
  trellisJson,
} from "./structure-json.ts";
import { type MainlineJson, mainlineJson, noMainline, noTrench, type TrenchJson, trenchJson } from "./trench-json.ts";

/** Goes up when a member changes its meaning or goes away; new members leave it alone. */
export const planJsonVersion = 1;

/** 9 decimals of a degree are 0.1 mm: row ends can be measured between without the rounding showing. */
const rowEndDecimals = 9;

export interface PlanJson {
  readonly schema: "tautrow-plan";
  readonly version: typeof planJsonVersion;
  /** Which input this is, when there were several; null otherwise. */
  readonly source: string | null;
  readonly name: string | null;
  readonly ground: {
    readonly parcelArea_m2: number | null;
    readonly plantingArea_m2: number | null;
    /** True when an outline was walked with a phone: not for staking. */
    readonly sketch: boolean;
    /** Origin of the local plane, [lon, lat]. */
    readonly frame: { readonly origin: readonly [number, number] } | null;
  };
  readonly blocks: readonly BlockJson[];
  readonly rows: readonly RowJson[];
  readonly totals: TotalsJson;
  readonly trellis: TrellisJson;
  readonly mainline: MainlineJson;
  readonly drip: DripJson;
  readonly trench: TrenchJson;
  readonly materials: readonly LineJson[];
  readonly coils: readonly CoilsJson[];
  readonly cost: CostJson;
  readonly findings: readonly FindingJson[];
}

/** A line of the shopping list with its `spec` written out; what is sold by the piece has no packs. */
export type LineJson = Omit<MaterialLine, "spec"> & { readonly spec: string };

export interface BlockJson {
  readonly id: string;
  readonly name: string;
  /** Clockwise from true north at the block's centre, in [0, 180). */
  readonly bearing_deg: number;
  /** Only when a day was given for it. */
  readonly compass: CompassReading | null;
  readonly rowSpacing_m: number;
  readonly vineSpacing_m: number;
  readonly rows: number;
  readonly rowLength_m: number;
  readonly vines: number;
  readonly plantedArea_m2: number;
  readonly shortPieces: number;
  readonly shortLength_m: number;
}

export interface RowJson {
  readonly id: string;
  readonly block: string;
  readonly number: number;
  readonly length_m: number;
  readonly groundLength_m: number;
  readonly slopeAlong_ratio: number | null;
  readonly slopeAcross_ratio: number | null;
  readonly aspect_deg: number | null;
  readonly start: readonly [number, number];
  readonly end: readonly [number, number];
  readonly startCut: Cause | null;
  readonly endCut: Cause | null;
  readonly startLeftover_m: number;
  readonly endLeftover_m: number;
  /** Feature the row was taken from, when it stands already. */
  readonly given: string | null;
  readonly waterEnd: "start" | "end";
  readonly vines: number;
  readonly linePosts: number;
  readonly stakes: number;
  readonly wire_m: WireJson;
  readonly lateral_m: number;
  readonly emitters: number;
  readonly flow_lph: number;
  readonly stakeClips: number;
  readonly hoseClips: number;
  /** Its wires as they are cut, and everything else its trellis is built from. */
  readonly runs: readonly RunJson[];
  readonly parts: readonly PartJson[];
  /** Its share of every line of the list, by what it takes of it. */
  readonly cost: MaterialCost;
}

export interface TotalsJson {
  readonly rows: number;
  readonly rowLength_m: number;
  readonly vines: number;
  readonly linePosts: number;
  readonly stakes: number;
  readonly wire_m: WireJson;
  readonly lateral_m: number;
  readonly emitters: number;
  readonly flow_lph: number;
  readonly plantedArea_m2: number;
}

export interface FindingJson {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly reason: string;
  readonly remedy: string;
  readonly at: readonly [number, number] | null;
  readonly feature: string | null;
}

type WireJson = Readonly<Partial<Record<WirePurpose, number>>>;

export interface PlanJsonOptions {
  /** Units of the sentences in `findings` and of `spec` in `materials`; every number of the object is SI in any case. Default metric. */
  readonly units?: UnitSystem;
  readonly source?: string | null;
  /** Compass readings to tell with the blocks. */
  readonly compass?: readonly CompassReading[];
}

/** A plan as one plain object of the documented schema (DEVELOPERS.md); numbers are not rounded, row ends and the main line have 9 decimals. */
export function planJson(plan: Plan, options: PlanJsonOptions = {}): PlanJson {
  return {
    ...emptyPlanJson(plan.findings, options),
    name: plan.project.name,
    ground: {
      parcelArea_m2: plan.ground?.parcelArea_m2 ?? null,
      plantingArea_m2: plan.ground?.plantingArea_m2 ?? null,
      sketch: isSketch(plan),
      frame: plan.ground === null ? null : { origin: [plan.ground.frame.origin[0], plan.ground.frame.origin[1]] },
    },
    blocks: blocksJson(plan, options.compass ?? []),
    rows: rowsJson(plan),
    totals: totalsJson(plan),
    trellis: trellisJson(plan),
    mainline: mainlineJson(plan),
    drip: dripJson(plan, options.units ?? "metric"),
    trench: trenchJson(plan, options.units ?? "metric"),
    materials: (plan.materials?.lines ?? []).map((line) => ({
      ...line,
      spec: text(line.spec, options.units ?? "metric"),
      packs: line.packs.filter(({ size }) => line.unit === "m" || size !== 1),
    })),
    coils: coilsJson(plan),
    cost: costJson(plan),
  };
}

/** The same object for an input that could not be read at all: no rows, totals of zero, and the findings that say why. */
export function emptyPlanJson(findings: readonly Finding[], options: PlanJsonOptions = {}): PlanJson {
  return {
    schema: "tautrow-plan",
    version: planJsonVersion,
    source: options.source ?? null,
    name: null,
    ground: { parcelArea_m2: null, plantingArea_m2: null, sketch: false, frame: null },
    blocks: [],
    rows: [],
    totals: noTotals,
    trellis: noTrellis,
    mainline: noMainline,
    drip: noDrip,
    trench: noTrench,
    materials: [],
    coils: [],
    cost: noCost,
    findings: findings.map((finding) => findingJson(finding, options.units ?? "metric")),
  };
}

/** A finding with its sentences written out in one system of units. */
export function findingJson(finding: Finding, units: UnitSystem): FindingJson {
  return {
    code: finding.code,
    severity: finding.severity,
    message: text(finding.message, units),
    reason: text(finding.reason, units),
    remedy: text(finding.remedy, units),
    at: finding.at === null ? null : [finding.at[0], finding.at[1]],
    feature: finding.feature,
  };
}

const noTotals: TotalsJson = {
  rows: 0,
  rowLength_m: 0,
  vines: 0,
  linePosts: 0,
  stakes: 0,
  wire_m: {},
  lateral_m: 0,
  emitters: 0,
  flow_lph: 0,
  plantedArea_m2: 0,
};

function blocksJson(plan: Plan, compass: readonly CompassReading[]): readonly BlockJson[] {
  const { rows } = plan;
  if (rows === null) return [];
  return rows.blocks.map((block) => {
    const settings = plan.project.blocks.find((candidate) => candidate.id === block.block);
    const own = rows.rows.slice(block.first, block.first + block.count);
    return {
      id: block.block,
      name: settings?.name ?? block.block,
      bearing_deg: block.bearing_deg,
      compass: compass.find((reading) => reading.block === block.block) ?? null,
      rowSpacing_m: block.rowSpacing_m,
      vineSpacing_m: settings?.rows.vineSpacing_m ?? 0,
      rows: block.count,
      rowLength_m: block.length_m,
      vines: own.reduce((sum, row) => sum + row.vines, 0),
      plantedArea_m2: block.plantedArea_m2,
      shortPieces: block.shortPieces,
      shortLength_m: block.shortLength_m,
    };
  });
}

function rowsJson(plan: Plan): readonly RowJson[] {
  return (plan.rows?.rows ?? []).map((row, index) => {
    const drip = plan.drip?.rows[index];
    const trellis = plan.trellis?.rows[index];
    return {
      id: row.id,
      block: row.block,
      number: row.number,
      length_m: row.length_m,
      groundLength_m: row.groundLength_m,
      slopeAlong_ratio: row.slopeAlong_ratio,
      slopeAcross_ratio: row.slopeAcross_ratio,
      aspect_deg: row.aspect_deg,
      start: position(placed(plan, row.start), rowEndDecimals),
      end: position(placed(plan, row.end), rowEndDecimals),
      startCut: row.startCut,
      endCut: row.endCut,
      startLeftover_m: row.startLeftover_m,
      endLeftover_m: row.endLeftover_m,
      given: row.given,
      waterEnd: plan.mainline?.waterEnd[index] ?? "start",
      vines: row.vines,
      linePosts: row.linePosts,
      stakes: row.stakes,
      wire_m: trellis?.wire_m ?? {},
      lateral_m: drip?.lateral_m ?? 0,
      emitters: drip?.emitters ?? 0,
      flow_lph: drip?.flow_lph ?? 0,
      stakeClips: trellis?.stakeClips ?? 0,
      hoseClips: drip?.hoseClips ?? 0,
      ...rowStructureJson(plan, index),
    };
  });
}

function totalsJson(plan: Plan): TotalsJson {
  const rows = plan.rows?.rows ?? [];
  const wire_m: Partial<Record<WirePurpose, number>> = {};
  for (const block of plan.project.blocks) for (const wire of block.trellis.wires) wire_m[wire.purpose] = 0;
  return {
    rows: rows.length,
    rowLength_m: rows.reduce((sum_m, row) => sum_m + row.length_m, 0),
    vines: rows.reduce((sum, row) => sum + row.vines, 0),
    linePosts: rows.reduce((sum, row) => sum + row.linePosts, 0),
    stakes: rows.reduce((sum, row) => sum + row.stakes, 0),
    wire_m: { ...wire_m, ...plan.trellis?.wire_m },
    lateral_m: plan.drip?.lateral_m ?? 0,
    emitters: plan.drip?.emitters ?? 0,
    flow_lph: plan.drip?.flow_lph ?? 0,
    plantedArea_m2: (plan.rows?.blocks ?? []).reduce((sum_m2, block) => sum_m2 + block.plantedArea_m2, 0),
  };
}
