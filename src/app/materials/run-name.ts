import type { CutJob } from "../../core/materials/cutting/cut-job.ts";
import { isHose } from "../../core/materials/drip-articles.ts";
import type { Plan } from "../../core/plan.ts";
import type { Block, Wire } from "../../core/project/project.ts";
import type { Row } from "../../core/rows/rows.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";

/** A wire that runs are cut for, told apart on the bars by its line. */
export interface CutWire {
  readonly block: string;
  /** null where the project has one block. */
  readonly blockName: string | null;
  /** Place in the block's wires. */
  readonly wire: number;
  /** null for hose. */
  readonly of: Wire | null;
  /** Place among the looks that wires are drawn with. */
  readonly look: number;
}

export const looks = 4;

/** The wires that a job is for, each once, in the order of the blocks and of their wires. */
export function wiresOf(plan: Plan, job: CutJob): readonly CutWire[] {
  const rows = plan.rows?.rows ?? [];
  const blocks = new Map<string, Block>(plan.project.blocks.map((block) => [block.id, block]));
  const found = new Map<string, CutWire>();
  for (const { row, wire } of job.runs) {
    const id = rows[row]?.block ?? "";
    const key = `${id} ${wire}`;
    if (found.has(key)) continue;
    const block = blocks.get(id);
    const of = isHose(job.article) ? null : (block?.trellis.wires[wire] ?? null);
    const blockName = blocks.size > 1 ? (block?.name ?? null) : null;
    found.set(key, { block: id, blockName, wire, of, look: found.size % looks });
  }
  return [...found.values()];
}

/** "fruiting wire at 36 in", "hose"; with the block's name before it where there are several. */
export function wireName(wire: CutWire | undefined, units: UnitSystem): string {
  const name = wire?.of ? `${wire.of.purpose} wire at ${formatQuantity("length", wire.of.height_m, units)}` : "hose";
  return wire?.blockName ? `${wire.blockName}, ${name}` : name;
}

/** A row as it is called within its block, for where there is little room: "14a" of "east-14a". */
export function shortRow({ id, block }: Row): string {
  return id.startsWith(`${block}-`) ? id.slice(block.length + 1) : id;
}
