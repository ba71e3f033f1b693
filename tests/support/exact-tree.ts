/** A graph with one-way arcs: for each node the nodes that it leads to and what the way costs. */
export type Graph = readonly (readonly Arc[])[];

export interface Arc {
  readonly to: number;
  readonly cost: number;
}

/** A graph whose ways lead both ways. */
export function bothWays(nodes: number, ways: readonly (readonly [from: number, to: number, cost: number])[]): Graph {
  const graph: Arc[][] = Array.from({ length: nodes }, () => []);
  for (const [from, to, cost] of ways) {
    graph[from]?.push({ to, cost });
    graph[to]?.push({ to: from, cost });
  }
  return graph;
}

/** Least cost from one node to every other; infinite where no way leads. Dijkstra without a queue: for comparison, not for speed. */
export function leastCosts(graph: Graph, from: number): Float64Array {
  return settled(
    graph,
    Float64Array.from(graph, (_, node) => (node === from ? 0 : Infinity)),
  );
}

/**
 * Cost of the cheapest tree that leads from the root to at least one node of every group, infinite when there is none: dynamic programming
 * over sets of groups (S. E. Dreyfus and R. A. Wagner, The Steiner problem in graphs, Networks 1, 1971, from memory). Exact; up to about
 * ten groups.
 */
export function exactTreeCost(graph: Graph, root: number, groups: readonly (readonly number[])[]): number {
  if (groups.length === 0) return 0;
  const backwards = reversed(graph);
  const all = 2 ** groups.length - 1;
  // costs[set][node]: cheapest tree from the node to every group of the set.
  const costs: Float64Array[] = [new Float64Array(graph.length)];
  for (let set = 1; set <= all; set++) {
    const cost = new Float64Array(graph.length).fill(Infinity);
    const single = groups.findIndex((_, g) => set === 2 ** g);
    for (const node of groups[single] ?? []) cost[node] = 0;
    // Every way to part the set in two; each pair once.
    for (let part = (set - 1) & set; part > (set & ~part); part = (part - 1) & set) {
      const [one, other] = [costs[part], costs[set & ~part]];
      if (one === undefined || other === undefined) continue;
      for (let node = 0; node < cost.length; node++) {
        cost[node] = Math.min(cost[node] ?? Infinity, (one[node] ?? Infinity) + (other[node] ?? Infinity));
      }
    }
    costs.push(settled(backwards, cost));
  }
  return costs[all]?.[root] ?? Infinity;
}

/** Lowers costs along arcs until none can be lowered. */
function settled(graph: Graph, cost: Float64Array): Float64Array {
  const isDone = new Uint8Array(graph.length);
  for (;;) {
    let next = -1;
    for (let node = 0; node < graph.length; node++) {
      if (isDone[node] === 0 && (cost[node] ?? Infinity) < (next < 0 ? Infinity : (cost[next] ?? 0))) next = node;
    }
    if (next < 0) return cost;
    isDone[next] = 1;
    for (const { to, cost: way } of graph[next] ?? []) {
      cost[to] = Math.min(cost[to] ?? Infinity, (cost[next] ?? Infinity) + way);
    }
  }
}

function reversed(graph: Graph): Graph {
  const back: Arc[][] = graph.map(() => []);
  graph.forEach((arcs, from) => {
    for (const { to, cost } of arcs) back[to]?.push({ to: from, cost });
  });
  return back;
}
