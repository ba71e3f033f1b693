import type { Graph, Link } from "../graph/graph.ts";
import type { NodeGroup } from "../graph/group-tree.ts";
import { createPathSearch } from "../graph/shortest-paths.ts";
import type { EndChoice } from "./row-groups.ts";

/** Groups that a way is looked for to from each: a spanning tree goes to near ones. */
const mostMet = 48;
/** What groups without a way between them count as apart. */
const farthest = 1e9;

/**
 * A quick estimate of what a choice of ends costs: the least spanning tree over the cheapest ways between the groups, and the links along
 * them (Prim). `heads` are those of each group at its two ends; `fixed` is joined in any case: the source and drawn lines.
 */
export function endsEstimate(
  graph: Graph,
  links: readonly Link[],
  heads: readonly (readonly NodeGroup[])[],
  fixed: readonly NodeGroup[],
): (choice: EndChoice) => number {
  const all = [...fixed, ...heads.flat()];
  const count = all.length;
  const apart = apartOf(
    graph,
    all.map(({ nodes }) => nodes.filter((node) => node >= 0)),
  );
  const along = all.map((group) => group.links.reduce((sum, i) => sum + (links[i]?.cost ?? 0), 0));
  const near = new Float64Array(count);
  const spanning = (members: readonly number[]): number => {
    const left = [...members];
    for (const member of left) near[member] = Infinity;
    let cost = 0;
    for (let at = left.shift(); at !== undefined && left.length > 0; ) {
      let nearest = 0;
      for (const [i, member] of left.entries()) {
        const away = Math.min(Number(near[member]), Number(apart[at * count + member]));
        near[member] = away;
        if (away < Number(near[left[nearest] ?? 0])) nearest = i;
      }
      at = left[nearest];
      cost += Number(near[at ?? 0]);
      left[nearest] = left.at(-1) ?? 0;
      left.pop();
    }
    return cost;
  };
  return (choice) => {
    const chosen = choice.flatMap((side, g) => (side === null ? [] : [fixed.length + 2 * g + side]));
    return spanning([...fixed.keys(), ...chosen]) + chosen.reduce((sum, i) => sum + Number(along[i]), 0);
  };
}

/** What the cheapest ways between groups cost, each with its nearest ones; `farthest` for all others. */
function apartOf(graph: Graph, groups: readonly (readonly number[])[]): Float64Array {
  const count = groups.length;
  const apart = new Float64Array(count * count).fill(farthest);
  const groupsAt = new Map<number, number[]>();
  groups.forEach((nodes, g) => {
    for (const node of nodes) groupsAt.set(node, [...(groupsAt.get(node) ?? []), g]);
  });
  groups.forEach((nodes, i) => {
    const search = createPathSearch(graph);
    for (const node of nodes) search.begin(node);
    const met = new Set<number>();
    search.next((node) => {
      for (const j of groupsAt.get(node) ?? []) {
        if (met.has(j)) continue;
        met.add(j);
        const cost = Number(search.cost[node]);
        apart[i * count + j] = Math.min(Number(apart[i * count + j]), cost);
        apart[j * count + i] = Math.min(Number(apart[j * count + i]), cost);
      }
      return met.size >= mostMet;
    });
  });
  return apart;
}
