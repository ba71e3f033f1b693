import FlatQueue from "flatqueue";
import type { Graph } from "./graph.ts";

/** A search for cheapest ways that may be begun at more nodes while it is under way. */
export interface PathSearch {
  /** Cost of the cheapest way to each node so far; infinite where none is found yet. */
  readonly cost: Float64Array;
  /** Ways may begin at this node too. */
  begin(node: number): void;
  /** Goes on to the next nearest node that is wanted, which is not gone past; -1 when there is none. */
  next(isWanted: (node: number) => boolean): number;
  /** The links of the way to a node, last first. */
  linksTo(node: number): readonly number[];
}

/** Dijkstra's algorithm over a graph. */
export function createPathSearch(graph: Graph): PathSearch {
  const cost = new Float64Array(graph.nodes).fill(Infinity);
  const before = new Int32Array(graph.nodes).fill(-1);
  const by = new Int32Array(graph.nodes).fill(-1);
  const queue = new FlatQueue<number>();
  const next = (isWanted: (node: number) => boolean): number => {
    for (;;) {
      const told = queue.peekValue();
      const node = queue.peek();
      if (node === undefined || told === undefined) return -1;
      const here = Number(cost[node]);
      if (told <= here && isWanted(node)) return node;
      queue.pop();
      if (told > here) continue;
      for (let i = Number(graph.first[node]); i < Number(graph.first[node + 1]); i++) {
        const other = Number(graph.to[i]);
        const costs = here + Number(graph.cost[i]);
        if (costs >= Number(cost[other])) continue;
        cost[other] = costs;
        before[other] = node;
        by[other] = Number(graph.link[i]);
        queue.push(other, costs);
      }
    }
  };
  return {
    cost,
    begin: (node) => {
      if (cost[node] === 0 && by[node] === -1) return;
      cost[node] = 0;
      by[node] = -1;
      queue.push(node, 0);
    },
    next,
    linksTo: (node) => {
      const links: number[] = [];
      for (let at = node; Number(by[at]) >= 0; at = Number(before[at])) links.push(Number(by[at]));
      return links;
    },
  };
}
