import type { Mainline } from "../mainline/water-end.ts";
import type { Block } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import { emittersOf, hoseLength_m } from "./hose.ts";

/** Drip of each row, in the order of the plan's rows. */
export interface Drip {
  readonly rows: readonly {
    /** Hose from the end post at the water end to past the last vine. */
    readonly lateral_m: number;
    /** Where the hose meets the water. */
    readonly waterEnd: "start" | "end";
    readonly emitters: number;
    readonly hoseClips: number;
    readonly flow_lph: number;
  }[];
  readonly lateral_m: number;
  readonly emitters: number;
  readonly flow_lph: number;
}

/**
 * Drip of every row. The lateral runs from the end post at the water end to the last vine on the far side and past it by the overrun,
 * along the ground, and is longer by its slack; a row without vines has none. Emitters are so many a vine, or those built into the hose.
 * Hose clips: one a gap between vines and one at each end (common practice, no source). Flow is all emitters at their nominal flow, L/h.
 * Gives no findings.
 */
export function drip(rows: Rows, { waterEnd: waterEnds }: Pick<Mainline, "waterEnd">, blocks: readonly Block[]): Drip {
  const settings = new Map(blocks.map((block) => [block.id, block.drip]));
  const perRow = rows.rows.map((row, index) => {
    const own = settings.get(row.block);
    if (own === undefined) throw new Error(`row ${row.id} is of block ${row.block}, which the project does not have`);
    const waterEnd = waterEnds[index] ?? "start";
    const lateral_m = hoseLength_m(rows, row, index, waterEnd, own);
    const emitters = emittersOf(row.vines, lateral_m, own);
    return {
      lateral_m,
      waterEnd,
      emitters,
      hoseClips: row.vines === 0 ? 0 : row.vines - 1 + 2,
      flow_lph: emitters * own.emitterFlow_lph,
    };
  });
  return {
    rows: perRow,
    lateral_m: perRow.reduce((sum_m, row) => sum_m + row.lateral_m, 0),
    emitters: perRow.reduce((sum, row) => sum + row.emitters, 0),
    flow_lph: perRow.reduce((sum_lph, row) => sum_lph + row.flow_lph, 0),
  };
}
