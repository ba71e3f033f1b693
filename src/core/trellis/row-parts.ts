import type { Block } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import type { Part, PartCount, PartKind } from "./part.ts";
import type { BlockTrellis, PostLayout } from "./trellis.ts";

/** Everything a row is built from but its wire runs. */
export function rowParts(row: Row, block: Block, structure: BlockTrellis): readonly PartCount[] {
  const counts: readonly PartCount[] = [
    { part: post("end-post", structure.endPost), quantity: 2 },
    { part: post("line-post", structure.linePost), quantity: row.linePosts },
    ...(structure.stake === null ? [] : [{ part: post("stake", structure.stake), quantity: row.stakes }]),
    { part: piece("stake-clip"), quantity: row.stakes * fruitingWires(block.trellis.wires) },
  ];
  return counts.filter(({ quantity }) => quantity > 0);
}

/** Fruiting wires of a row, pairs counted twice. */
export function fruitingWires(wires: Block["trellis"]["wires"]): number {
  return wires.reduce((count, wire) => count + (wire.purpose === "fruiting" ? wire.count : 0), 0);
}

function post(kind: PartKind, { article, length_m, diameter_mm }: PostLayout): Part {
  return { article, kind, unit: "pieces", length_m, diameter_mm };
}

function piece(kind: PartKind): Part {
  return { article: kind, kind, unit: "pieces", length_m: null, diameter_mm: null };
}
