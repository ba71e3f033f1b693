import { type LineTree, otherEnd } from "./line-tree.ts";

/** What a low place of a line holds. */
export interface Pool {
  /** Its lowest node. */
  readonly node: number;
  /** How far water rises over it before it runs to a lower place; for the lowest place of all, up to the highest. */
  readonly by_m: number;
  /** Of pipe below that height, less what runs to fitted pools within it; by kind of piece. */
  readonly length_m: readonly number[];
  readonly isFitted: boolean;
}

interface Basin {
  readonly node: number;
  readonly level_m: number;
  readonly isWhole: boolean;
}

/**
 * The low places of a line over its whole tree, from `noticed_m` deep; fitted are those from `fitted_m` on. Ripples within a hollow are not
 * told apart from it: of two lows with a saddle between them the higher one is a low of its own only as far as the saddle is above it
 * (persistence of the minima). Water may leave where heights are not known. Lengths are told by kind of piece, such as its bore: 0, 1, …
 */
export function poolsOf(
  height_m: Float64Array,
  tree: LineTree,
  noticed_m: number,
  fitted_m: number,
  kindOf: (piece: number) => number = () => 0,
): readonly Pool[] {
  const basins = basinsOf(height_m, tree)
    .filter(({ node, level_m }) => level_m - Number(height_m[node]) >= noticed_m)
    .sort((a, b) => a.level_m - b.level_m || Number(a.isWhole) - Number(b.isWhole));
  const kept_m = new Map<number, readonly number[]>();
  return basins.map((basin) => {
    const { length_m, inside } = flooded(basin, height_m, tree, kindOf);
    const by_m = basin.level_m - Number(height_m[basin.node]);
    const within = [...kept_m].filter(([node]) => inside.has(node));
    const own_m = length_m.map((all_m, kind) => within.reduce((left_m, [, of_m]) => left_m - (of_m[kind] ?? 0), all_m));
    const isFitted = by_m >= fitted_m;
    if (isFitted) kept_m.set(basin.node, own_m);
    return { node: basin.node, by_m, length_m: own_m, isFitted };
  });
}

/** Nodes join in the order of their heights; where two basins meet, the higher one is full. */
function basinsOf(height_m: Float64Array, tree: LineTree): readonly Basin[] {
  const up = Int32Array.from(height_m, (_, node) => node);
  const isOpen = new Uint8Array(height_m.length);
  const isMet = new Uint8Array(height_m.length);
  const found: Basin[] = [];
  const lowestOf = (node: number): number => {
    let at = node;
    while (Number(up[at]) !== at) {
      up[at] = Number(up[Number(up[at])]);
      at = Number(up[at]);
    }
    return at;
  };
  const order = [...height_m.keys()]
    .filter((node) => !Number.isNaN(Number(height_m[node])))
    .sort((a, b) => Number(height_m[a]) - Number(height_m[b]) || a - b);
  for (const node of order) {
    isMet[node] = 1;
    const level_m = Number(height_m[node]);
    for (const piece of tree.pieces[node] ?? []) {
      const other = otherEnd(tree, piece, node);
      const here = lowestOf(node);
      if (Number.isNaN(Number(height_m[other]))) {
        if (isOpen[here] === 0) found.push({ node: here, level_m, isWhole: false });
        isOpen[here] = 1;
      } else if (isMet[other] === 1) {
        const there = lowestOf(other);
        if (there === here) continue;
        const isHereFull =
          isOpen[there] === 1 || (isOpen[here] === 0 && Number(height_m[here]) >= Number(height_m[there]));
        const [full, kept] = isHereFull ? [here, there] : [there, here];
        if (isOpen[full] === 0) found.push({ node: full, level_m, isWhole: false });
        up[full] = kept;
      }
    }
  }
  const highest = new Map<number, number>();
  for (const node of order) highest.set(lowestOf(node), Number(height_m[node]));
  for (const [node, level_m] of highest) if (isOpen[node] === 0) found.push({ node, level_m, isWhole: true });
  return found;
}

/** The pipe of a basin that lies below its level, by kind of piece, and the nodes in it. */
function flooded(
  { node: low, level_m, isWhole }: Basin,
  height_m: Float64Array,
  tree: LineTree,
  kindOf: (piece: number) => number,
) {
  const inside = new Set([low]);
  const order = [low];
  const counted = new Set<number>();
  const length_m = [0];
  for (let i = 0; i < order.length; i++) {
    const node = order[i] ?? low;
    const from_m = Number(height_m[node]);
    for (const piece of tree.pieces[node] ?? []) {
      const other = otherEnd(tree, piece, node);
      const to_m = Number(height_m[other]);
      if (counted.has(piece) || Number.isNaN(to_m)) continue;
      counted.add(piece);
      const isFull = to_m < level_m || isWhole;
      const share = isFull || to_m === from_m ? 1 : (level_m - from_m) / (to_m - from_m);
      const kind = kindOf(piece);
      while (length_m.length <= kind) length_m.push(0);
      length_m[kind] = (length_m[kind] ?? 0) + share * Number(tree.length_m[piece]);
      if (!isFull || inside.has(other)) continue;
      inside.add(other);
      order.push(other);
    }
  }
  return { length_m, inside };
}
