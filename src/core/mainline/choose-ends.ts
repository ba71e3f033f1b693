import { withExchangedPaths } from "../graph/exchange-paths.ts";
import { graphOf } from "../graph/graph.ts";
import { type GroupTree, type NodeGroup, nearestGroupTree } from "../graph/group-tree.ts";
import { endsEstimate } from "./ends-estimate.ts";
import type { RouteGraph } from "./route-graph.ts";
import { headsOf, type RowGroup } from "./row-groups.ts";

/** The end that each group meets the water at; null where no trench can be. */
export type EndChoice = readonly (0 | 1 | null)[];

/** The chosen ends, the source, and the tree to them. */
export interface ChosenEnds {
  /** Index into the job's sources. */
  readonly source: number;
  /** In the order of the groups; null where no trench gets to. */
  readonly ends: EndChoice;
  /** Links of the draft. */
  readonly links: readonly number[];
}

/** With so many groups at most, changes are tried on the tree itself, and it is begun from every group; with more on the estimate only. */
const mostTried = 12;
/** What a group without water counts: more than any trench. */
const missedCost = 1e9;

/**
 * The ends and the source with the least cost that is found: beginning with one end for all, and the other, one group at a time is turned
 * round for as long as that helps, by an estimate first and then on the tree itself. Never dearer than one end for all.
 */
export function chooseEnds(graph: RouteGraph, groups: readonly RowGroup[]): ChosenEnds {
  const { draft, sources, drawn } = graph;
  const packed = graphOf(draft.xy.length / 2, draft.links);
  const heads = groups.map((group) => ([0, 1] as const).map((side) => headsOf(group, side, graph)));
  const rootOf = (source: number): NodeGroup => ({ nodes: [Number(sources[source])], links: [] });
  const groupsOf = (choice: EndChoice, source: number): readonly NodeGroup[] => {
    const wanted = choice.flatMap((side, g) => (side === null ? [] : (heads[g]?.[side] ?? [])));
    return [rootOf(source), ...drawn, ...wanted];
  };
  const treeOf = (choice: EndChoice, source: number): GroupTree =>
    nearestGroupTree(packed, draft.links, groupsOf(choice, source));
  /** Where a tree is begun decides how good it gets: from each group in turn, where they are few. */
  const leastTree = (choice: EndChoice, source: number): GroupTree => {
    const all = groupsOf(choice, source);
    const first = treeOf(choice, source);
    if (first.missed.length > 0 || groups.length > mostTried) return first;
    return all.slice(1).reduce((least, one) => {
      const tree = nearestGroupTree(packed, draft.links, [one, ...all.filter((other) => other !== one)]);
      return tree.cost < least.cost ? tree : least;
    }, first);
  };

  const uniform = ([0, 1] as const).map((side): EndChoice => groups.map(({ ends }) => preferred(ends, side)));
  const estimate = endsEstimate(
    packed,
    draft.links,
    heads,
    [...drawn, ...[...sources.keys()].map(rootOf)],
    drawn.length,
  );
  const tried = [...uniform, ...uniform.map((choice) => improved(choice, groups, estimate))];
  const options = [...sources.keys()].flatMap((source) => tried.map((choice) => ({ source, choice })));
  const quick = leastOf(options, ({ choice, source }) => costOf(treeOf(choice, source)));
  const turned =
    groups.length > mostTried
      ? quick.choice
      : improved(quick.choice, groups, (choice) => costOf(treeOf(choice, quick.source)));
  const last = [turned, ...uniform].map((choice) => ({ choice, tree: leastTree(choice, quick.source) }));
  const { choice, tree } = leastOf(last, (each) => costOf(each.tree));
  const mustJoin = new Set(groupsOf(choice, quick.source).flatMap(({ nodes }) => nodes));
  return {
    source: quick.source,
    ends: reached(choice, tree.missed, 1 + drawn.length),
    links: withExchangedPaths(packed, draft.links, tree.links, mustJoin),
  };
}

function costOf({ cost, missed }: GroupTree): number {
  return cost + missed.length * missedCost;
}

/** The one that costs least; the first of several. */
function leastOf<T>(all: readonly T[], costs: (one: T) => number): T {
  const priced = all.map((one) => ({ one, cost: costs(one) }));
  return priced.reduce((least, each) => (each.cost < least.cost ? each : least)).one;
}

function preferred(ends: RowGroup["ends"], side: 0 | 1): 0 | 1 | null {
  return ends.includes(side) ? side : (ends[0] ?? null);
}

/** Turns one group round at a time for as long as the cost falls. */
function improved(choice: EndChoice, groups: readonly RowGroup[], costOf: (choice: EndChoice) => number): EndChoice {
  let best = choice;
  let least = costOf(choice);
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const [g, { ends }] of groups.entries()) {
      if (ends.length < 2) continue;
      const other = best.with(g, best[g] === 0 ? 1 : 0);
      const cost = costOf(other);
      if (cost >= least - 1e-9) continue;
      [best, least, isBetter] = [other, cost, true];
    }
  }
  return best;
}

/** Choices without those that the tree missed; `before` groups stand before those of rows. */
function reached(choice: EndChoice, missed: readonly number[], before: number): EndChoice {
  const places = choice.flatMap((side, g) => (side === null ? [] : [g]));
  const out = new Set(missed.map((i) => places[i - before]));
  return choice.map((side, g) => (out.has(g) ? null : side));
}
