import type { Graph, Link } from "../graph/graph.ts";
import type { NodeGroup } from "../graph/group-tree.ts";
import { costsFrom } from "../graph/shortest-paths.ts";
import type { EndChoice } from "./choose-ends.ts";

/**
 * A quick estimate of what a choice of ends costs: the least spanning tree over the cheapest ways between the groups, and the links along
 * them (Prim). `heads` are those of each group at its two ends; of `fixed` the first `lines` are joined in any case, of the others (the
 * sources) the one that is cheapest.
 */
export function endsEstimate(
  graph: Graph,
  links: readonly Link[],
  heads: readonly (readonly NodeGroup[])[],
  fixed: readonly NodeGroup[],
  lines: number,
): (choice: EndChoice) => number {
  const all = [...fixed, ...heads.flat()];
  const nodeSets = all.map(({ nodes }) => nodes.filter((node) => node >= 0));
  const apart = nodeSets.map((nodes) => {
    const cost = costsFrom(graph, nodes);
    return nodeSets.map((others) => others.reduce((least, node) => Math.min(least, Number(cost[node])), Infinity));
  });
  const along = all.map((group) => group.links.reduce((sum, i) => sum + (links[i]?.cost ?? 0), 0));
  const sources = Array.from({ length: fixed.length - lines }, (_, i) => lines + i);
  const spanning = (members: readonly number[]): number => {
    const left = new Set(members);
    const near = new Map(members.map((member) => [member, Infinity]));
    let cost = 0;
    let [at] = members;
    while (at !== undefined) {
      left.delete(at);
      let next: number | undefined;
      let least = Infinity;
      for (const member of left) {
        const away = Math.min(near.get(member) ?? Infinity, apart[at]?.[member] ?? Infinity);
        near.set(member, away);
        if (next === undefined || away < least) [next, least] = [member, away];
      }
      if (next !== undefined) cost += Math.min(least, 1e9);
      at = next;
    }
    return cost;
  };
  return (choice) => {
    const chosen = choice.flatMap((side, g) => (side === null ? [] : [fixed.length + 2 * g + side]));
    const drawn = Array.from({ length: lines }, (_, i) => i);
    const trees = sources.map((source) => spanning([source, ...drawn, ...chosen]));
    return Math.min(...trees) + chosen.reduce((sum, i) => sum + Number(along[i]), 0);
  };
}
