import type { Block, TieOffKind, Wire, WireHold } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import { endParts, one, postPart } from "./end-parts.ts";
import type { Part, PartCount, PartKind } from "./part.ts";
import type { BlockTrellis } from "./trellis.ts";

/**
 * Everything a row is built from but its wire runs: two end assemblies, line posts, stakes, and what holds wire on them. A fixed wire is
 * held once on every line post and at both ends, a movable one hangs on a hook on every line post; a stake has one clip for every fruiting
 * wire. Common practice, no source. Counts of one article are added up.
 */
export function rowParts(row: Row, { trellis }: Block, structure: BlockTrellis): readonly PartCount[] {
  const { wires, endPost, linePost, endAssembly } = trellis;
  const fixed = countOf(wires.filter(({ isMovable }) => !isMovable));
  const movable = countOf(wires) - fixed;
  const many = (kind: PartKind | null, quantity: number): readonly PartCount[] =>
    kind === null ? [] : [{ ...one(kind), quantity }];
  const ends = endParts(structure, endAssembly, endPost).map((each) => ({ ...each, quantity: 2 * each.quantity }));
  const counts: readonly PartCount[] = [
    ...ends,
    { part: postPart("line-post", structure.linePost), quantity: row.linePosts },
    ...(structure.stake === null ? [] : [{ part: postPart("stake", structure.stake), quantity: row.stakes }]),
    ...many("stake-clip", row.stakes * fruitingWires(wires)),
    ...many(fastener(linePost.holds), row.linePosts * fixed),
    ...many(fastener(endPost.holds), 2 * (fixed + movable)),
    ...many("wire-hook", row.linePosts * movable),
    ...wires.flatMap((wire) =>
      [wire.tieOffStart, wire.tieOffEnd].flatMap(({ kind }) => many(...tieOffParts(kind, wire.count))),
    ),
    ...many(
      "tensioner",
      wires.reduce((sum, wire) => sum + wire.tensioners * wire.count, 0),
    ),
  ];
  return added(counts);
}

/** Fruiting wires of a row, pairs counted twice. */
export function fruitingWires(wires: readonly Wire[]): number {
  return countOf(wires.filter(({ purpose }) => purpose === "fruiting"));
}

function countOf(wires: readonly Wire[]): number {
  return wires.reduce((sum, { count }) => sum + count, 0);
}

/** What holds one wire on one post; null where the post itself does. */
function fastener(holds: WireHold): PartKind | null {
  switch (holds) {
    case "staple":
      return "staple";
    case "notch":
      return "wire-clip";
    case "eye-bolt":
      return "eye-bolt";
    case "hole":
      return null;
    default:
      return holds satisfies never;
  }
}

/** A crimped end takes two sleeves; a wrapped loop takes nothing but wire. Common practice, no source. */
function tieOffParts(kind: TieOffKind, wires: number): readonly [PartKind | null, number] {
  switch (kind) {
    case "gripper":
      return ["gripper", wires];
    case "crimp":
      return ["crimp-sleeve", 2 * wires];
    case "loop":
      return [null, 0];
    default:
      return kind satisfies never;
  }
}

function added(counts: readonly PartCount[]): readonly PartCount[] {
  const sums = new Map<string, { part: Part; quantity: number }>();
  for (const { part, quantity } of counts) {
    if (quantity === 0) continue;
    const before = sums.get(part.article);
    if (before === undefined) sums.set(part.article, { part, quantity });
    else before.quantity += quantity;
  }
  return [...sums.values()];
}
