import type { Block, Wire, WirePurpose } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";

export type WireLengths = Readonly<Partial<Record<WirePurpose, number>>>;

/** Structure and wire of each row, in the order of the plan's rows. */
export interface Trellis {
  readonly rows: readonly {
    /** One wire of this row as it is cut: ground length and both tie-offs. */
    readonly run_m: number;
    /** Wire to cut by purpose: the run, for every wire of that purpose. */
    readonly wire_m: WireLengths;
    readonly stakeClips: number;
  }[];
  readonly wire_m: WireLengths;
  /** The same wire told apart by diameter too, in the order purposes and diameters are first met: what is bought. */
  readonly wires: readonly WireTotal[];
}

/** All wire of one purpose and one diameter. */
export interface WireTotal {
  readonly purpose: WirePurpose;
  readonly diameter_mm: number;
  readonly length_m: number;
  /** Wires counted one by one over all rows. */
  readonly runs: number;
  readonly longestRun_m: number;
}

/**
 * Wire and stake clips of every row. A run of wire is the row's ground length (end post to end post) plus the allowance of the
 * tie-off at each end; splices and slack are not added. One stake clip for every stake and fruiting wire that it meets. No findings.
 * Source: calculation handbook 2.6 (checks 2-34, 2-35); tie-off allowances are common practice, no source.
 */
export function trellis(rows: Rows, blocks: readonly Block[]): Trellis {
  const settings = new Map(blocks.map((block) => [block.id, block.trellis]));
  const total: Partial<Record<WirePurpose, number>> = {};
  const wires = new Map<string, WireTotal>();
  const perRow = rows.rows.map((row) => {
    const own = settings.get(row.block);
    if (own === undefined) throw new Error(`row ${row.id} is of block ${row.block}, which the project does not have`);
    const run_m = row.groundLength_m + own.tieOffStart.allowance_m + own.tieOffEnd.allowance_m;
    const wire_m: Partial<Record<WirePurpose, number>> = {};
    for (const wire of own.wires) {
      const length_m = wire.count * run_m;
      wire_m[wire.purpose] = (wire_m[wire.purpose] ?? 0) + length_m;
      total[wire.purpose] = (total[wire.purpose] ?? 0) + length_m;
      addTo(wires, wire, run_m);
    }
    return { run_m, wire_m, stakeClips: row.stakes * fruitingWires(own.wires) };
  });
  return { rows: perRow, wire_m: total, wires: [...wires.values()] };
}

/** Fruiting wires of a row, pairs counted twice. */
export function fruitingWires(wires: readonly Wire[]): number {
  return wires.reduce((count, wire) => count + (wire.purpose === "fruiting" ? wire.count : 0), 0);
}

function addTo(wires: Map<string, WireTotal>, wire: Wire, run_m: number): void {
  const key = `${wire.purpose} ${wire.diameter_mm}`;
  const before = wires.get(key);
  wires.set(key, {
    purpose: wire.purpose,
    diameter_mm: wire.diameter_mm,
    length_m: (before?.length_m ?? 0) + wire.count * run_m,
    runs: (before?.runs ?? 0) + wire.count,
    longestRun_m: Math.max(before?.longestRun_m ?? 0, run_m),
  });
}
