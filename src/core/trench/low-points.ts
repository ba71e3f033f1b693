import { type LineTree, onNodes, partOf } from "./line-tree.ts";
import type { PipesOnLegs } from "./pipes-on-legs.ts";
import { type Pool, poolsOf } from "./pools.ts";
import type { FullPipe, Profile, ProfilePoint } from "./trench.ts";

/** Hollows shallower than this are roughness of the digging, m. */
const noticed_m = 0.02;

/** A low or high place of one line's pipe, which nothing but its own ends and valves drains. */
export interface LinePoint {
  readonly line: number;
  /** Of the tree of the trench. */
  readonly node: number;
  readonly by_m: number;
  readonly full: readonly FullPipe[];
  readonly isFitted: boolean;
}

/**
 * Where water stands in the pipe of each line, with the pipe that stays full there. From `leastLow_m` below the lower shoulder on it gets a
 * drain, one for each.
 */
export function lineLows(
  profiles: readonly Profile[],
  tree: LineTree,
  lines: PipesOnLegs,
  leastLow_m: number,
): readonly LinePoint[] {
  const pipe_m = onNodes(tree, profiles, (profile) => profile.pipe_m);
  return [...lines].flatMap(([line, legs]) => {
    const bores_mm = [...new Set([...legs.values()].map(({ inside_mm }) => inside_mm))];
    const boreOf = (piece: number) => bores_mm.indexOf(legs.get(Number(tree.leg[piece]))?.inside_mm ?? 0);
    const own = partOf(tree, (leg) => legs.has(leg));
    return poolsOf(pipe_m, own, noticed_m, leastLow_m, boreOf).map(({ node, by_m, length_m, isFitted }) => ({
      line,
      node,
      by_m,
      full: bores_mm.map((inside_mm, i) => ({ inside_mm, length_m: length_m[i] ?? 0 })),
      isFitted,
    }));
  });
}

/**
 * Where air gathers in each line: its high places, as far above their higher foot as low points are below their lower shoulder, and its far
 * end (`fars`, points of the route), which always gets its air valve (calculation handbook, section 7).
 */
export function lineHighs(
  profiles: readonly Profile[],
  tree: LineTree,
  lines: PipesOnLegs,
  leastLow_m: number,
  fars: readonly { readonly line: number; readonly point: number }[],
): readonly LinePoint[] {
  const up_m = onNodes(tree, profiles, (profile) => profile.pipe_m).map((height_m) => -height_m);
  const nodeAt = nodesByPoint(profiles, tree);
  return [...lines].flatMap(([line, legs]) => {
    const own = fars.filter((far) => far.line === line).flatMap(({ point }) => nodeAt.get(point) ?? []);
    const part = partOf(tree, (leg) => legs.has(leg));
    const highs = poolsOf(up_m, part, noticed_m, leastLow_m).map(({ node, by_m, isFitted }): LinePoint => {
      return { line, node, by_m, full: [], isFitted: isFitted || own.includes(node) };
    });
    const bare = own.filter((node) => !highs.some((high) => high.node === node));
    return [...highs, ...bare.map((node): LinePoint => ({ line, node, by_m: 0, full: [], isFitted: true }))];
  });
}

/** Where water stands in the open trench. */
export function ponds(profiles: readonly Profile[], tree: LineTree, leastLow_m: number): readonly Pool[] {
  return poolsOf(
    onNodes(tree, profiles, (profile) => profile.pipe_m),
    tree,
    noticed_m,
    leastLow_m,
  );
}

/**
 * Places of the lines as points of the trench, those of one place together: the deepest of them, and all that their pipes hold there: V = A L
 * (calculation handbook, section 7).
 */
export function profilePoints(
  profiles: readonly Profile[],
  tree: LineTree,
  points: readonly LinePoint[],
  open: readonly Pool[],
): readonly ProfilePoint[] {
  const pond_m = new Map(open.map(({ node, by_m }) => [node, by_m]));
  const nodes = new Set([...points.map(({ node }) => node), ...pond_m.keys()]);
  return [...nodes]
    .map((node): ProfilePoint => {
      const own = points.filter((point) => point.node === node);
      const full = own.flatMap((point) => point.full);
      const fitted = own.filter(({ isFitted }) => isFitted).length;
      return {
        ...placeOfNode(profiles, tree, node),
        by_m: own.reduce((most_m, { by_m }) => Math.max(most_m, by_m), pond_m.get(node) ?? 0),
        trapped_l: full.reduce((sum_l, each) => sum_l + held_l(each), 0),
        full,
        isFitted: fitted > 0,
        fitted,
        pond_m: pond_m.get(node) ?? 0,
      };
    })
    .sort((a, b) => a.branch - b.branch || a.station_m - b.station_m);
}

/** Litres in a full length of pipe. */
export function held_l({ inside_mm, length_m }: FullPipe): number {
  return length_m * ((Math.PI / 4) * (inside_mm / 1000) ** 2 * 1000);
}

/** The node of every point of the route. */
export function nodesByPoint(profiles: readonly Profile[], tree: LineTree): ReadonlyMap<number, number> {
  return new Map(
    profiles.flatMap(({ point }, branch) =>
      [...point].flatMap((each, i): readonly (readonly [number, number])[] =>
        each < 0 ? [] : [[each, Number(tree.nodes[branch]?.[i])]],
      ),
    ),
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
