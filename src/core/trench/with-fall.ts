import { type LineTree, onNodes, otherEnd } from "./line-tree.ts";
import { depthOf, type Layers } from "./profile.ts";
import type { Profile } from "./trench.ts";

/**
 * The profiles with a least fall towards the lowest place of the line: from everywhere the bottom falls on the way there by at least
 * `grade_ratio`, and lies nowhere above constant cover. Where the ground is not known the depth stays that of the cover, and each part of
 * the line between such places falls to its own lowest place.
 */
export function withFall(
  profiles: readonly Profile[],
  tree: LineTree,
  grade_ratio: number,
  layers: Layers,
): readonly Profile[] {
  const ground_m = onNodes(tree, profiles, (profile) => profile.ground_m);
  const bottom_m = ground_m.map((height_m) => height_m - depthOf(layers));
  for (const nodes of knownParts(tree, ground_m)) {
    const low = nodes.reduce((best, node) => (Number(ground_m[node]) < Number(ground_m[best]) ? node : best));
    const order = outwardFrom(low, tree, ground_m);
    for (const { node, piece } of [...order].reverse()) {
      if (piece < 0) continue;
      const next = otherEnd(tree, piece, node);
      const fallen_m = Number(bottom_m[node]) - grade_ratio * Number(tree.level_m[piece]);
      bottom_m[next] = Math.min(Number(bottom_m[next]), fallen_m);
    }
  }
  const toMiddle_m = layers.bedding_m + layers.outside_m / 2;
  return profiles.map((profile, b) => {
    const nodes = tree.nodes[b] ?? new Int32Array();
    const own_m = Float64Array.from(nodes, (node) => Number(bottom_m[node]));
    return {
      ...profile,
      bottom_m: own_m,
      pipe_m: own_m.map((height_m) => height_m + toMiddle_m),
      depth_m: own_m.map((height_m, i) =>
        Number.isNaN(height_m) ? depthOf(layers) : Number(profile.ground_m[i]) - height_m,
      ),
    };
  });
}

/** The nodes of every part of the line whose ground is known. */
function knownParts(tree: LineTree, ground_m: Float64Array): readonly (readonly number[])[] {
  const seen = new Uint8Array(ground_m.length);
  const parts: (readonly number[])[] = [];
  ground_m.forEach((height_m, node) => {
    if (Number.isNaN(height_m) || seen[node] === 1) return;
    const part = outwardFrom(node, tree, ground_m).map((each) => each.node);
    for (const each of part) seen[each] = 1;
    parts.push(part);
  });
  return parts;
}

/** Every node that is reached over known ground, nearer ones first, with the piece that leads back; -1 for the node it begins at. */
function outwardFrom(
  start: number,
  tree: LineTree,
  ground_m: Float64Array,
): readonly { readonly node: number; readonly piece: number }[] {
  const order = [{ node: start, piece: -1 }];
  for (let i = 0; i < order.length; i++) {
    const here = order[i];
    if (here === undefined) break;
    for (const piece of tree.pieces[here.node] ?? []) {
      const next = otherEnd(tree, piece, here.node);
      if (piece !== here.piece && !Number.isNaN(Number(ground_m[next]))) order.push({ node: next, piece });
    }
  }
  return order;
}
