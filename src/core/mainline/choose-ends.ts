import { withExchangedPaths } from "../graph/exchange-paths.ts";
import type { Graph } from "../graph/graph.ts";
import { type GroupTree, type NodeGroup, nearestGroupTree } from "../graph/group-tree.ts";
import { endsEstimate } from "./ends-estimate.ts";
import type { RouteGraph } from "./route-graph.ts";
import { type EndChoice, headsOf, type RowGroup } from "./row-groups.ts";

/** The chosen ends and a tree to them. */
export interface ChosenEnds {
  /** In the order of the groups; null where no trench gets to. */
  readonly ends: EndChoice;
  /** What the tree costs, those that are missed at more than any trench. */
  readonly cost: number;
  /** Links of the tree, after its paths have been exchanged for cheaper ones. */
  links(): readonly number[];
}

/** With so many groups at most, changes are tried on the tree itself, and it is begun from every group; with more on the estimate only. */
const mostTried = 12;
/** What a group without water counts: more than any trench. */
const missedCost = 1e9;

/**
 * The ends with the least cost that is found for one source, given by its node: beginning with one end for all, and the other, one group
 * at a time is turned round for as long as that helps, by an estimate first and then on the tree itself; paths of the tree are then
 * exchanged for cheaper ones.
 */
export function chooseEnds(graph: RouteGraph, packed: Graph, groups: readonly RowGroup[], source: number): ChosenEnds {
  const { draft, drawn } = graph;
  const heads = groups.map((group) => ([0, 1] as const).map((side) => headsOf(group, side, graph)));
  const root: NodeGroup = { nodes: [source], links: [] };
  const groupsOf = (choice: EndChoice): readonly NodeGroup[] => {
    const wanted = choice.flatMap((side, g) => (side === null ? [] : (heads[g]?.[side] ?? [])));
    return [root, ...drawn, ...wanted];
  };
  const treeOf = (choice: EndChoice): GroupTree => nearestGroupTree(packed, draft.links, groupsOf(choice));
  const treeCost = (choice: EndChoice): number => costOf(treeOf(choice));
  const isFew = groups.length <= mostTried;

  const uniform = ([0, 1] as const).map((side): EndChoice => groups.map(({ ends }) => preferred(ends, side)));
  const isSettled = groups.every(({ ends }) => ends.length < 2);
  const estimate = isSettled ? () => 0 : endsEstimate(packed, draft.links, heads, [root, ...drawn]);
  const likely = uniform.map((one) => improved(one, groups, estimate));
  const tried = isSettled ? uniform.slice(1) : [...uniform, ...likely, ...bestOfAll(groups, estimate)];
  const quick = leastOf(tried, treeCost);
  const choice = isFew && !isSettled ? improved(quick, groups, treeCost) : quick;
  const all = groupsOf(choice);
  const first = treeOf(choice);
  /** Where a tree is begun decides how good it gets: from each group in turn, where they are few. */
  const begun = isFew && first.missed.length === 0 ? all.slice(1) : [];
  const trees = begun.map((one) => nearestGroupTree(packed, draft.links, [one, ...all.filter((each) => each !== one)]));
  const tree = leastOf([first, ...trees], costOf);
  return {
    ends: reached(choice, first.missed, 1 + drawn.length),
    cost: costOf(tree),
    links: () => withExchangedPaths(packed, draft.links, tree.links, new Set(all.flatMap(({ nodes }) => nodes))),
  };
}

/** Of so few groups every choice is estimated, and the best of them tried. */
const mostAll = 10;
const bestTried = 6;

/** The choices of the least estimates, of all there are; none where there are too many. */
function bestOfAll(groups: readonly RowGroup[], estimate: (choice: EndChoice) => number): readonly EndChoice[] {
  if (groups.length > mostAll) return [];
  const all = groups.reduce<readonly EndChoice[]>(
    (choices, { ends }) =>
      choices.flatMap((choice) => (ends.length === 0 ? [null] : ends).map((side) => [...choice, side])),
    [[]],
  );
  return all
    .map((choice) => ({ choice, cost: estimate(choice) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, bestTried)
    .map(({ choice }) => choice);
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
function improved(choice: EndChoice, groups: readonly RowGroup[], costs: (choice: EndChoice) => number): EndChoice {
  let best = choice;
  let least = costs(choice);
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const [g, { ends }] of groups.entries()) {
      if (ends.length < 2) continue;
      const other = best.with(g, best[g] === 0 ? 1 : 0);
      const cost = costs(other);
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
