import type { Finding } from "../finding.ts";
import type { Block, Planting } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import { plantingPastLastRow, plantingsOverlap, plantingWithoutRows } from "./findings.ts";

/** Vines of one variety on one rootstock; variety null where no planting names the row. */
export interface VineLot {
  readonly variety: string | null;
  readonly rootstock: string | null;
  readonly vines: number;
  /** Vines and their spare, not yet rounded. */
  readonly withSpare: number;
}

/**
 * The vines to order, told apart by variety and rootstock in the order they are met. A row belongs to the first planting of its block
 * that names its number; rows that none names take the default spare. Findings: materials/planting-without-rows,
 * materials/planting-past-last-row, materials/plantings-overlap.
 */
export function vineLots(
  rows: readonly Row[],
  blocks: readonly Block[],
  defaultSpare_ratio: number,
): { readonly lots: readonly VineLot[]; readonly findings: readonly Finding[] } {
  const lots = new Map<string, VineLot>();
  for (const block of blocks) {
    for (const row of rows) {
      if (row.block !== block.id || row.vines === 0) continue;
      const planting = block.plantings.find((candidate) => names(candidate, row.number)) ?? null;
      const variety = planting?.variety ?? null;
      const rootstock = planting?.rootstock ?? null;
      const key = JSON.stringify([variety, rootstock]);
      const before = lots.get(key);
      const spare_ratio = planting?.spare_ratio ?? defaultSpare_ratio;
      lots.set(key, {
        variety,
        rootstock,
        vines: (before?.vines ?? 0) + row.vines,
        withSpare: (before?.withSpare ?? 0) + row.vines * (1 + spare_ratio),
      });
    }
  }
  return { lots: [...lots.values()], findings: blocks.flatMap((block) => plantingFindings(rows, block)) };
}

/** True when the vines of a row belong to the lot: it goes by the first planting of its block that names its number. */
export function lotOf(lot: VineLot, row: Row, blocks: readonly Block[]): boolean {
  const block = blocks.find(({ id }) => id === row.block);
  if (block === undefined) return false;
  const planting = block.plantings.find((candidate) => names(candidate, row.number)) ?? null;
  return lot.variety === (planting?.variety ?? null) && lot.rootstock === (planting?.rootstock ?? null);
}

function names(planting: Planting, number: number): boolean {
  return planting.fromRow <= number && number <= planting.toRow;
}

function plantingFindings(rows: readonly Row[], block: Block): readonly Finding[] {
  const numbers = rows.filter((row) => row.block === block.id).map((row) => row.number);
  const last = numbers.reduce((most, number) => Math.max(most, number), 0);
  return block.plantings.flatMap((planting, index) => {
    if (!numbers.some((number) => names(planting, number))) return [plantingWithoutRows(block, planting, last)];
    const findings: Finding[] = [];
    if (planting.toRow > last) findings.push(plantingPastLastRow(block, planting, last));
    const rival = block.plantings
      .slice(0, index)
      .find((earlier) => numbers.some((number) => names(earlier, number) && names(planting, number)));
    if (rival !== undefined) findings.push(plantingsOverlap(block, rival, planting));
    return findings;
  });
}
