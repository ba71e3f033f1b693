import { type LineTree, onNodes } from "./line-tree.ts";
import { poolsOf } from "./pools.ts";
import type { Profile, ProfilePoint } from "./trench.ts";

/** Hollows shallower than this are roughness of the digging, m. */
const noticed_m = 0.02;

/**
 * Where water stands in the pipe, and in the trench while it is open (both fall alike), with the litres of pipe that stay full there: V = A L
 * (calculation handbook, section 7). From `leastLow_m` below the lower shoulder on it gets a drain, one for each.
 */
export function lowPoints(
  profiles: readonly Profile[],
  tree: LineTree,
  inside_mm: number,
  leastLow_m: number,
): readonly ProfilePoint[] {
  const bore_lpm = (Math.PI / 4) * (inside_mm / 1000) ** 2 * 1000;
  const pipe_m = onNodes(tree, profiles, (profile) => profile.pipe_m);
  return inOrder(
    poolsOf(pipe_m, tree, noticed_m, leastLow_m).map(({ node, by_m, length_m, isFitted }) => ({
      ...placeOfNode(profiles, tree, node),
      by_m,
      trapped_l: length_m * bore_lpm,
      isFitted,
    })),
  );
}

/**
 * Where air gathers: the high places of the pipe, as far above their higher foot as low points are below their lower shoulder, and the far
 * end of the main, which always gets its air valve (calculation handbook, section 7).
 */
export function highPoints(profiles: readonly Profile[], tree: LineTree, leastLow_m: number): readonly ProfilePoint[] {
  const pipe_m = onNodes(tree, profiles, (profile) => profile.pipe_m);
  const far = tree.nodes[0]?.at(-1) ?? -1;
  const highs = poolsOf(
    pipe_m.map((height_m) => -height_m),
    tree,
    noticed_m,
    leastLow_m,
  ).map(({ node, by_m, isFitted }) => ({ node, by_m, isFitted: isFitted || node === far }));
  if (far >= 0 && !highs.some(({ node }) => node === far)) highs.push({ node: far, by_m: 0, isFitted: true });
  return inOrder(
    highs.map(({ node, by_m, isFitted }) => ({ ...placeOfNode(profiles, tree, node), by_m, trapped_l: 0, isFitted })),
  );
}

function placeOfNode(profiles: readonly Profile[], tree: LineTree, node: number) {
  const branch = Number(tree.branch[node]);
  const i = Number(tree.station[node]);
  const profile = profiles[branch];
  const [x, y] = [Number(profile?.xy[2 * i]), Number(profile?.xy[2 * i + 1])];
  return {
    branch,
    station_m: Number(profile?.station_m[i]),
    xy: [x, y] as const,
    height_m: Number(profile?.pipe_m[i]),
  };
}

function inOrder(points: readonly ProfilePoint[]): readonly ProfilePoint[] {
  return [...points].sort((a, b) => a.branch - b.branch || a.station_m - b.station_m);
}
