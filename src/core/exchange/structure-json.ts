import { perVineAndArea } from "../materials/cost.ts";
import type { CutPlan } from "../materials/cutting/cut-plan.ts";
import type { MaterialCost } from "../materials/material-line.ts";
import type { Plan } from "../plan.ts";
import type { BlockLoads, DipLoad } from "../trellis/loads.ts";
import type { BlockTrellis } from "../trellis/trellis.ts";

/** One wire of a row; `wire` is its place in the block's wires. */
export interface RunJson {
  readonly wire: number;
  readonly article: string;
  readonly count: number;
  readonly supported_m: number;
  readonly length_m: number;
}

export interface PartJson {
  readonly article: string;
  readonly unit: "m" | "pieces";
  readonly quantity: number;
}

/** The structure of the blocks with what it carries, and the posts in dips with the id of their row. */
export interface TrellisJson {
  readonly blocks: readonly (BlockTrellis & { readonly loads: BlockLoads | null })[];
  readonly dips: readonly (Omit<DipLoad, "row"> & { readonly row: string })[];
}

/** What is cut from the coils of one article; cuts name their run by its place in `runs`. */
export interface CoilsJson {
  readonly article: string;
  readonly runs: readonly {
    readonly row: string;
    readonly wire: number;
    readonly copy: number;
    readonly length_m: number;
  }[];
  readonly plan: CutPlan | null;
}

export interface CostJson extends MaterialCost {
  readonly currency: string | null;
  readonly perVine: number | null;
  readonly perArea_m2: number | null;
  readonly blocks: readonly (MaterialCost & { readonly block: string })[];
}

/** The wire runs of a row in the order of its block's wires, everything else it is built from, and its share of the cost. */
export function rowStructureJson(
  { rows, trellis, materials }: Plan,
  index: number,
): { readonly runs: readonly RunJson[]; readonly parts: readonly PartJson[]; readonly cost: MaterialCost } {
  const own = trellis?.rows[index];
  const block = trellis?.blocks.find((one) => one.block === rows?.rows[index]?.block);
  return {
    runs: (own?.runs ?? []).map(({ count, supported_m, length_m }, wire) => ({
      wire,
      article: block?.wires[wire]?.article ?? "",
      count,
      supported_m,
      length_m,
    })),
    parts: (own?.parts ?? []).map(({ part, quantity }) => ({ article: part.article, unit: part.unit, quantity })),
    cost: materials?.rowCosts[index] ?? { price: 0, unpriced: 0, mass_kg: 0 },
  };
}

/** Structure and loads of every block; nothing in it when the trellis could not be laid. */
export function trellisJson({ rows, trellis }: Plan): TrellisJson {
  if (trellis === null) return noTrellis;
  return {
    blocks: trellis.blocks.map((block, i) => ({ ...block, loads: trellis.loads.blocks[i] ?? null })),
    dips: trellis.loads.dips.map((dip) => ({ ...dip, row: rows?.rows[dip.row]?.id ?? "" })),
  };
}

/** The cutting plans, an article each. */
export function coilsJson({ rows, materials }: Plan): readonly CoilsJson[] {
  return (materials?.coils ?? []).map(({ job, plan }) => ({
    article: job.article,
    runs: job.runs.map(({ row, wire, copy, length_m }) => ({ row: rows?.rows[row]?.id ?? "", wire, copy, length_m })),
    plan,
  }));
}

/** What the list costs as far as it is priced: in all, a vine, a square metre, a block. */
export function costJson({ project, rows, materials }: Plan): CostJson {
  if (rows === null || materials === null) return noCost;
  return {
    currency: project.materials.currency,
    ...materials.cost,
    ...perVineAndArea(materials.cost, rows),
    blocks: project.blocks.flatMap(({ id }, i) => {
      const cost = materials.blockCosts[i];
      return cost === undefined ? [] : [{ block: id, ...cost }];
    }),
  };
}

export const noTrellis: TrellisJson = { blocks: [], dips: [] };
export const noCost: CostJson = {
  currency: null,
  price: 0,
  unpriced: 0,
  mass_kg: 0,
  perVine: null,
  perArea_m2: null,
  blocks: [],
};
