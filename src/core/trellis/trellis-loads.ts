import type { Finding } from "../finding.ts";
import { type Elevation, heightReader } from "../ground/elevation.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { dipLoads } from "./dip-loads.ts";
import { endLoads } from "./end-loads.ts";
import { loadCautions } from "./load-cautions.ts";
import { blockLoadFindings } from "./load-findings.ts";
import type { BlockLoads, TrellisLoads } from "./loads.ts";
import type { BlockTrellis, RowTrellis } from "./trellis.ts";
import { wireLoads } from "./wire-loads.ts";

/**
 * Tension, sag and loads of the structure: of every block in its longest bay and on its longest run, and the posts in dips. Findings:
 * those of `blockLoadFindings` and `loadCautions`.
 */
export function trellisLoads(
  rows: Rows,
  elevation: Elevation,
  blocks: readonly Block[],
  structure: { readonly blocks: readonly BlockTrellis[]; readonly rows: readonly RowTrellis[] },
): { readonly value: TrellisLoads; readonly findings: readonly Finding[] } {
  const loaded = structure.blocks.flatMap((own) => {
    const block = blocks.find(({ id }) => id === own.block);
    if (block === undefined) return [];
    const bays = longestBays_m(rows, own.block);
    const wires = own.wires.map((wire, w) => {
      const run_m = rows.rows.reduce(
        (most_m, row, i) =>
          row.block === own.block ? Math.max(most_m, structure.rows[i]?.runs[w]?.supported_m ?? 0) : most_m,
        0,
      );
      return wireLoads(wire, block, Math.max(bays.inner_m, bays.end_m + wire.reach_m), run_m);
    });
    const loads: BlockLoads = { wires, end: endLoads(own, wires) };
    return [{ block, structure: own, loads, hasRows: bays.end_m > 0 }];
  });
  const dips =
    elevation.kind === "flat"
      ? []
      : dipLoads(rows, heightReader(elevation), new Map(loaded.map(({ block, loads }) => [block.id, loads.end])));
  const planted = loaded.filter(({ hasRows }) => hasRows);
  return {
    value: { blocks: loaded.map(({ loads }) => loads), dips },
    findings: [...planted.flatMap((each) => blockLoadFindings(each, rows, dips)), ...loadCautions(planted)],
  };
}

/** Longest bay between two line posts, and between an end post and the next post, m; 0 in a block without rows. */
function longestBays_m({ rows, linePosts }: Rows, block: string) {
  let inner_m = 0;
  let end_m = 0;
  rows.forEach((row, i) => {
    if (row.block !== block) return;
    let before_m = 0;
    const [from, to] = [linePosts.offsets[i] ?? 0, linePosts.offsets[i + 1] ?? 0];
    for (let n = from; n < to; n++) {
      const bay_m = Number(linePosts.station_m[n]) - before_m;
      if (n === from) end_m = Math.max(end_m, bay_m);
      else inner_m = Math.max(inner_m, bay_m);
      before_m += bay_m;
    }
    end_m = Math.max(end_m, row.length_m - before_m);
  });
  return { inner_m, end_m };
}
