/** Nodes and links between them, both ways, packed: the links of node n are entries first[n] to first[n + 1]. */
export interface Graph {
  readonly nodes: number;
  readonly first: Int32Array;
  /** The node at the other end, the number of the link, and what it costs. */
  readonly to: Int32Array;
  readonly link: Int32Array;
  readonly cost: Float64Array;
}

/** Two nodes and what it costs to go from one to the other. */
export interface Link {
  readonly a: number;
  readonly b: number;
  readonly cost: number;
}

/** The graph of some links; link i of the graph is entry i of the list. Costs are not below 0. */
export function graphOf(nodes: number, links: readonly Link[]): Graph {
  const first = new Int32Array(nodes + 1);
  for (const { a, b } of links) {
    first[a + 1] = Number(first[a + 1]) + 1;
    first[b + 1] = Number(first[b + 1]) + 1;
  }
  for (let n = 0; n < nodes; n++) first[n + 1] = Number(first[n + 1]) + Number(first[n]);
  const next = first.slice();
  const to = new Int32Array(2 * links.length);
  const link = new Int32Array(2 * links.length);
  const cost = new Float64Array(2 * links.length);
  const put = (from: number, towards: number, i: number, costs: number): void => {
    const at = Number(next[from]);
    next[from] = at + 1;
    to[at] = towards;
    link[at] = i;
    cost[at] = costs;
  };
  links.forEach(({ a, b, cost: costs }, i) => {
    put(a, b, i, costs);
    put(b, a, i, costs);
  });
  return { nodes, first, to, link, cost };
}
