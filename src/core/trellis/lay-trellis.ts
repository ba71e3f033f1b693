import type { Elevation } from "../ground/elevation.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Block, WirePurpose } from "../project/project.ts";
import type { Row, Rows } from "../rows/rows.ts";
import { blockTrellis } from "./block-trellis.ts";
import { rowParts } from "./row-parts.ts";
import { structureFindings } from "./structure-findings.ts";
import type { BlockTrellis, HungWire, RowTrellis, Trellis, WireRun, WireTotal } from "./trellis.ts";
import { trellisLoads } from "./trellis-loads.ts";

/**
 * Structure, wire and loads of every row. A wire runs between its end supports at its height along the ground, and on by the tie-off at
 * each end (calculation handbook 2.6). Findings: those of `structureFindings` and `trellisLoads`.
 */
export function trellis(rows: Rows, elevation: Elevation, blocks: readonly Block[]): Outcome<Trellis> {
  const structures = rows.blocks.flatMap(({ block: id }) => {
    const block = blocks.find((each) => each.id === id);
    return block === undefined ? [] : [{ block, structure: blockTrellis(block) }];
  });
  const byBlock = new Map(structures.map((each) => [each.block.id, each]));
  const perRow = rows.rows.map((row): RowTrellis => {
    const own = byBlock.get(row.block);
    if (own === undefined) throw new Error(`row ${row.id} is of block ${row.block}, which the project does not have`);
    const parts = rowParts(row, own.block, own.structure);
    const runs = own.structure.wires.map((wire) => wireRun(row, wire));
    return {
      runs,
      wire_m: byPurpose(
        own.structure.wires.map(({ wire }, i) => [wire.purpose, wire.count * (runs[i]?.length_m ?? 0)]),
      ),
      stakeClips: parts.reduce((sum, { part, quantity }) => sum + (part.kind === "stake-clip" ? quantity : 0), 0),
      parts,
    };
  });
  const structure = { blocks: structures.map((each) => each.structure), rows: perRow };
  const loads = trellisLoads(rows, elevation, blocks, structure);
  return success(
    {
      ...structure,
      wire_m: byPurpose(perRow.flatMap(({ wire_m }) => purposes.map((purpose) => [purpose, wire_m[purpose]]))),
      wires: wireTotals(rows, byBlock, perRow),
      loads: loads.value,
    },
    [...structures.flatMap((each) => structureFindings(rows, each.block, each.structure)), ...loads.findings],
  );
}

const purposes: readonly WirePurpose[] = ["fruiting", "drip", "foliage"];

/** A wire of a row: between its end supports at its height, along the ground, and both tie-offs. */
function wireRun(row: Row, { wire, reach_m, tieOffStart_m, tieOffEnd_m }: HungWire): WireRun {
  const supported_m = row.groundLength_m + 2 * reach_m;
  return { count: wire.count, supported_m, length_m: supported_m + tieOffStart_m + tieOffEnd_m };
}

function byPurpose(lengths: readonly (readonly [purpose: WirePurpose, length_m: number | undefined])[]) {
  const sums: Partial<Record<WirePurpose, number>> = {};
  for (const [purpose, length_m] of lengths) {
    if (length_m !== undefined) sums[purpose] = (sums[purpose] ?? 0) + length_m;
  }
  return sums;
}

function wireTotals(
  rows: Rows,
  byBlock: ReadonlyMap<string, { readonly structure: BlockTrellis }>,
  perRow: readonly RowTrellis[],
): readonly WireTotal[] {
  const totals = new Map<string, WireTotal>();
  rows.rows.forEach((row, i) => {
    byBlock.get(row.block)?.structure.wires.forEach(({ wire, article }, w) => {
      const run_m = perRow[i]?.runs[w]?.length_m ?? 0;
      const before = totals.get(article);
      totals.set(article, {
        article,
        purposes: [...new Set([...(before?.purposes ?? []), wire.purpose])],
        diameter_mm: wire.diameter_mm,
        length_m: (before?.length_m ?? 0) + wire.count * run_m,
        runs: (before?.runs ?? 0) + wire.count,
        longestRun_m: Math.max(before?.longestRun_m ?? 0, run_m),
      });
    });
  });
  return [...totals.values()];
}
