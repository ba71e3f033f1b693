import FlatQueue from "flatqueue";
import type { Graph } from "./graph.ts";

/** Cheapest ways from some nodes. */
export interface ShortestPaths {
  /** Infinite where there is no way, or where none was looked for any more. */
  readonly cost: Float64Array;
  /** The node and the link by which each is reached; -1 at the beginnings and where there is no way. */
  readonly before: Int32Array;
  readonly by: Int32Array;
  /** The nearest target; -1 when none was asked for or none is reached. */
  readonly target: number;
}

/** Dijkstra's algorithm from several nodes at once; with targets it ends at the nearest one. */
export function shortestPaths(
  graph: Graph,
  from: Iterable<number>,
  isTarget: (node: number) => boolean = () => false,
): ShortestPaths {
  const cost = new Float64Array(graph.nodes).fill(Infinity);
  const before = new Int32Array(graph.nodes).fill(-1);
  const by = new Int32Array(graph.nodes).fill(-1);
  const queue = new FlatQueue<number>();
  for (const node of from) {
    cost[node] = 0;
    queue.push(node, 0);
  }
  for (;;) {
    const told = queue.peekValue();
    const node = queue.pop();
    if (node === undefined || told === undefined) return { cost, before, by, target: -1 };
    const here = Number(cost[node]);
    if (told > here) continue;
    if (isTarget(node)) return { cost, before, by, target: node };
    for (let i = Number(graph.first[node]); i < Number(graph.first[node + 1]); i++) {
      const next = Number(graph.to[i]);
      const costs = here + Number(graph.cost[i]);
      if (costs >= Number(cost[next])) continue;
      cost[next] = costs;
      before[next] = node;
      by[next] = Number(graph.link[i]);
      queue.push(next, costs);
    }
  }
}

/** The links of the way to a node, last first. */
export function linksTo({ before, by }: ShortestPaths, node: number): readonly number[] {
  const links: number[] = [];
  for (let at = node; Number(by[at]) >= 0; at = Number(before[at])) links.push(Number(by[at]));
  return links;
}
