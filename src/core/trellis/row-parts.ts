import type { Block, TieOffKind, Wire, WireHold } from "../project/project.ts";
import type { Row } from "../rows/rows.ts";
import { endParts, one, postPart } from "./end-parts.ts";
import type { Part, PartCount, PartKind } from "./part.ts";
import type { BlockTrellis } from "./trellis.ts";

/**
 * Everything a row is built from but its wire runs: two end assemblies, line posts, stakes, and what holds wire on them. A fixed wire is
 * held once on every line post, on brace posts it meets, and at both ends, a movable one hangs on a hook on every line post; a stake has one clip for every fruiting
 * wire. Common practice, no source. Counts of one article are added up.
 */
export function rowParts(row: Row, { trellis }: Block, structure: BlockTrellis): readonly PartCount[] {
  const { wires, endPost, linePost } = trellis;
  const fixed = countOf(wires.filter(({ isMovable }) => !isMovable));
  const movable = countOf(wires) - fixed;
  const many = (kind: PartKind | null, quantity: number): readonly PartCount[] =>
    kind === null ? [] : [{ ...one(kind), quantity }];
  const ends = endParts(structure, trellis).map((each) => ({ ...each, quantity: 2 * each.quantity }));
  const counts: readonly PartCount[] = [
    ...ends,
    { part: postPart("line-post", structure.linePost), quantity: row.linePosts },
    ...(structure.stake === null ? [] : [{ part: postPart("stake", structure.stake), quantity: row.stakes }]),
    ...many("stake-clip", row.stakes * fruitingWires(wires)),
    ...many(fastener(linePost.holds), row.linePosts * fixed),
    ...many(fastener(endPost.holds), 2 * (fixed + movable)),
    ...many("wire-hook", row.linePosts * movable),
    ...onBracePosts(structure, endPost.holds).flatMap(([kind, quantity]) => many(kind, 2 * quantity)),
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

/** Wires run past a brace post and are held on it as on a line post, those that are not over its top; bolts are for ends only. */
function onBracePosts(
  { bracePost, wires }: BlockTrellis,
  holds: WireHold,
): readonly (readonly [PartKind | null, number])[] {
  if (bracePost === null) return [];
  const met = wires.filter(({ height_m }) => height_m <= bracePost.top_m).map(({ wire }) => wire);
  const movable = countOf(met.filter(({ isMovable }) => isMovable));
  return [
    [fastener(holds === "eye-bolt" ? "staple" : holds), countOf(met) - movable],
    ["wire-hook", movable],
  ];
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
