import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import type { Plan } from "../../core/plan.ts";
import type { Block, Wire } from "../../core/project/project.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";

/** A wire that runs are cut for, told apart on the bars by its line. */
export interface CutWire {
  readonly block: string;
  /** Place in the block's wires. */
  readonly wire: number;
  /** null for hose. */
  readonly of: Wire | null;
  /** Place among the looks that wires are drawn with. */
  readonly look: number;
}

export const looks = 4;

/** The wires that a job is for, each once, in the order of the blocks and of their wires; the same wire has one look in all blocks. */
export function wiresOf(plan: Plan, job: CutJob): readonly CutWire[] {
  const rows = plan.rows?.rows ?? [];
  const blocks = new Map<string, Block>(plan.project.blocks.map((block) => [block.id, block]));
  const found = new Map<string, CutWire>();
  const lookOf = new Map<number, number>();
  for (const { row, wire } of job.runs) {
    const block = rows[row]?.block ?? "";
    const key = `${block} ${wire}`;
    if (found.has(key)) continue;
    const look = lookOf.get(wire) ?? lookOf.size % looks;
    lookOf.set(wire, look);
    const of = job.article === "hose" ? null : (blocks.get(block)?.trellis.wires[wire] ?? null);
    found.set(key, { block, wire, of, look });
  }
  return [...found.values()];
}

/** "fruiting wire at 36 in"; hose is hose. */
export function wireName(wire: CutWire | undefined, units: UnitSystem): string {
  if (!wire?.of) return "hose";
  return `${wire.of.purpose} wire at ${formatQuantity("length", wire.of.height_m, units)}`;
}
